/** What a file is, by the signature at its start (ISO/IEC 10918-1, ISO/IEC 15948, RFC 9649); undefined: none that is taken. */
export function kindOfPicture(bytes: Uint8Array): 'jpeg' | 'png' | 'webp' | undefined {
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return 'jpeg'
  if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'png'
  if (startsWith(bytes, [0x52, 0x49, 0x46, 0x46]) && startsWith(bytes.subarray(8), [0x57, 0x45, 0x42, 0x50])) {
    return 'webp'
  }
  return undefined
}

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, at) => bytes[at] === byte)
}
