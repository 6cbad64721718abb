import { deviceBook, openDeviceBook, putAtOnce } from './device-book.ts'
import { findHolder, holderNow, type Holder } from './holder.ts'
import { open, seal } from './seal.ts'

/** Under which name something half filled in is kept: by person, site and what it is about, such as `mount/<position id>`. */
export interface DraftKey {
  personId: string
  site: string
  subject: string
}

/** What a list of unfinished work says of one, and where it goes on. */
export interface DraftAbout {
  title: string
  address: string
}

interface SealedDraft<T> extends DraftAbout {
  value: T
  keptAt: string
}

export interface KeptDraft extends DraftAbout {
  subject: string
  keptAt: string
}

/** The device has no key of this person, or the browser keeps nothing: what is typed lasts as long as the page. */
export class NotKeptError extends Error {
  override readonly name = 'NotKeptError'
  constructor() {
    super('This device does not keep what you type: stay on this page until it is sent.')
  }
}

export function draftName({ personId, site, subject }: DraftKey): string {
  return `${personId}/${site}/${subject}`
}

/**
 * Keeps what was typed so far; fulfilled once it is on the disk. Writes of one key stay in the order in which they were asked for.
 * @throws NotKeptError where this device can't keep it
 */
export async function keepDraft(key: DraftKey, about: DraftAbout, value: unknown): Promise<void> {
  // where the key is at hand nothing is awaited before the write: that is what keeps the order
  const holder = holderNow() ?? (await findHolder())
  if (holder?.personId !== key.personId) throw new NotKeptError()
  await putAtOnce('drafts', draftRow(holder, key, about, value))
}

/** The row of a draft as it lies on the device. */
export function draftRow(holder: Holder, key: DraftKey, about: DraftAbout, value: unknown) {
  const name = draftName(key)
  const { title, address } = about
  const content: SealedDraft<unknown> = { title, address, value, keptAt: new Date().toISOString() }
  return { key: name, personId: key.personId, site: key.site, sealed: seal(holder.key, place(name), content) }
}

/** What was kept under the key, or null. */
export async function keptDraft<T>(key: DraftKey): Promise<T | null> {
  const holder = await findHolder()
  if (holder?.personId !== key.personId) return null
  const row = await deviceBook.drafts.get(draftName(key))
  return row ? open<SealedDraft<T>>(holder.key, place(row.key), row.sealed).value : null
}

export async function forgetDraft(key: DraftKey): Promise<void> {
  if (await openDeviceBook()) await deviceBook.drafts.delete(draftName(key))
}

/** Everything half filled in by this person at this site, the latest first. */
export async function draftsOf(personId: string, site: string): Promise<KeptDraft[]> {
  const holder = await findHolder()
  if (holder?.personId !== personId) return []
  const rows = await deviceBook.drafts.where({ personId }).toArray()
  const prefix = draftName({ personId, site, subject: '' })
  return rows
    .filter((row) => row.site === site)
    .map((row) => {
      const { title, address, keptAt } = open<SealedDraft<unknown>>(holder.key, place(row.key), row.sealed)
      return { subject: row.key.slice(prefix.length), title, address, keptAt }
    })
    .toSorted((a, b) => (a.keptAt < b.keptAt ? 1 : -1))
}

function place(name: string): string {
  return `drafts/${name}`
}
