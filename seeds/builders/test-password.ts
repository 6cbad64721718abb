import { hash } from '@node-rs/argon2'

/** The password of everybody whom `seedSmallSite` admits. */
export const testPassword = 'open the small book'

let hashed: Promise<string> | undefined

/** The hash of `testPassword`, made once a process and cheap on purpose: for tests only. */
export function testPasswordHash(): Promise<string> {
  hashed ??= hash(testPassword, { memoryCost: 8, timeCost: 1, parallelism: 1 })
  return hashed
}
