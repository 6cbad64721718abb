import { xchacha20poly1305 } from '@noble/ciphers/chacha.js'
import { randomBytes, utf8ToBytes } from '@noble/ciphers/utils.js'

const nonceBytes = 24

/**
 * Seals bytes with XChaCha20-Poly1305 under a key of 32 bytes: a fresh nonce, then the sealed text.
 * `place` names where they lie; what was sealed for one place does not open at another.
 */
export function sealBytes(key: Uint8Array, place: string, bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const nonce = randomBytes(nonceBytes)
  const sealed = xchacha20poly1305(key, nonce, utf8ToBytes(place)).encrypt(bytes)
  const whole = new Uint8Array(nonceBytes + sealed.length)
  whole.set(nonce)
  whole.set(sealed, nonceBytes)
  return whole
}

/** Opens what `sealBytes` made. Throws where key or place is another one, or a byte was changed. */
export function openBytes(key: Uint8Array, place: string, whole: Uint8Array): Uint8Array<ArrayBuffer> {
  const nonce = whole.subarray(0, nonceBytes)
  return xchacha20poly1305(key, nonce, utf8ToBytes(place)).decrypt(whole.subarray(nonceBytes))
}

/** Seals any JSON value, as `sealBytes`. */
export function seal(key: Uint8Array, place: string, value: unknown): Uint8Array<ArrayBuffer> {
  return sealBytes(key, place, utf8ToBytes(JSON.stringify(value)))
}

/** Opens what `seal` made. */
export function open<T>(key: Uint8Array, place: string, whole: Uint8Array): T {
  return JSON.parse(new TextDecoder().decode(openBytes(key, place, whole))) as T
}
