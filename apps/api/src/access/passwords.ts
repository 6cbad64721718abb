import { hash, verify } from '@node-rs/argon2'

/** argon2id with 19 MiB, 2 passes, 1 lane: the least that is recommended for sign-in. */
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 }

export function hashPassword(password: string): Promise<string> {
  return hash(password, cost)
}

let decoy: Promise<string> | undefined

/** True where the password fits. Without a hash (nobody of that name) it takes as long, so that names cannot be tried. */
export async function verifyPassword(passwordHash: string | undefined, password: string): Promise<boolean> {
  decoy ??= hashPassword('nobody signs in with this')
  const fits = await verify(passwordHash ?? (await decoy), password)
  return fits && passwordHash !== undefined
}
