import { deviceBook } from './device-book.ts'
import { NotKeptError } from './drafts.ts'
import { findHolder, type Holder } from './holder.ts'
import { open, openBytes, seal, sealBytes } from './seal.ts'

/** A file that belongs to something half filled in, with what is told of it. */
export interface KeptFile<T> {
  id: string
  file: Blob
  told: T
}

interface Names {
  readonly file: string
  readonly told: string
}

/** The rows of a file: its bytes are sealed once, what is told of it with every change. */
function namesOf(personId: string, of: string, id: string): Names {
  const name = `${prefixOf(personId, of)}${id}`
  return { file: `${name}/file`, told: `${name}/told` }
}

function prefixOf(personId: string, of: string): string {
  return `kept/${personId}/${of}/`
}

async function holderOrThrow(): Promise<Holder> {
  const holder = await findHolder()
  if (!holder) throw new NotKeptError()
  return holder
}

/** Keeps a file sealed on this device; fulfilled once it is on the disk. `of` says what it belongs to. @throws NotKeptError */
export async function keepFile(of: string, { id, file, told }: KeptFile<unknown>): Promise<void> {
  const { personId, key } = await holderOrThrow()
  const names = namesOf(personId, of, id)
  const bytes = new Uint8Array(await file.arrayBuffer())
  await deviceBook.bytes.bulkPut([
    { id: names.file, personId, type: file.type, sealed: sealBytes(key, names.file, bytes) },
    { id: names.told, personId, type: 'application/json', sealed: seal(key, names.told, told) },
  ])
}

/** Keeps what is told of a file that is kept already. @throws NotKeptError */
export async function tellOfFile(of: string, id: string, told: unknown): Promise<void> {
  const { personId, key } = await holderOrThrow()
  const name = namesOf(personId, of, id).told
  await deviceBook.bytes.put({ id: name, personId, type: 'application/json', sealed: seal(key, name, told) })
}

/** The files that are kept of something, in the order of their ids. */
export async function keptFiles<T>(of: string): Promise<KeptFile<T>[]> {
  const holder = await findHolder()
  if (!holder) return []
  const prefix = prefixOf(holder.personId, of)
  const rows = new Map((await deviceBook.bytes.where('id').startsWith(prefix).toArray()).map((row) => [row.id, row]))
  return [...rows.values()].flatMap((row) => {
    if (!row.id.endsWith('/file')) return []
    const id = row.id.slice(prefix.length, -'/file'.length)
    const told = rows.get(namesOf(holder.personId, of, id).told)
    if (!told) return []
    const file = new Blob([openBytes(holder.key, row.id, row.sealed)], { type: row.type })
    return [{ id, file, told: open<T>(holder.key, told.id, told.sealed) }]
  })
}

/** Takes every file that is kept of something off this device. */
export async function forgetFiles(of: string): Promise<void> {
  const holder = await findHolder()
  if (holder) await deviceBook.bytes.where('id').startsWith(prefixOf(holder.personId, of)).delete()
}

/** Takes a file off this device. */
export async function forgetFile(of: string, id: string): Promise<void> {
  const holder = await findHolder()
  if (!holder) return
  const names = namesOf(holder.personId, of, id)
  await deviceBook.bytes.bulkDelete([names.file, names.told])
}
