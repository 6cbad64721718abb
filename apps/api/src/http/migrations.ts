import { readdirSync } from 'node:fs'

const folder = new URL('../../../../prisma/migrations/', import.meta.url)
let names: string[] | undefined

/** The migrations that this version of the service was written for, in order. Read once. */
export function migrationNames(): string[] {
  names ??= readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
  return names
}
