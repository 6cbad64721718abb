import type { Problem } from '@shaftbook/contract/problem'
import type { AnyInput } from '../api/request.ts'
import { deviceBook, type OutboxRow } from './device-book.ts'
import type { DraftAbout } from './drafts.ts'
import type { Holder } from './holder.ts'
import { open, openBytes, seal, sealBytes } from './seal.ts'
import { standsBehind } from './send-order.ts'

export type WriteKind = 'mount' | 'removal' | 'greasing' | 'observation' | 'round' | 'photo'

/** The form's own value, to open it again where the service refused what was made of it. */
export interface Typed extends DraftAbout {
  subject: string
  value: unknown
}

/** What is sealed of an item. */
export interface OutboxContent {
  kind: WriteKind
  /** What it is about, as a person would say it: `Greasing of P-101`. */
  subjectText: string
  /** The page that it was made on. */
  address: string
  endpoint: { name: string; method: 'POST' | 'PATCH' | 'DELETE'; path: `/api/v1/${string}` }
  input: AnyInput
  typed: Typed | null
  queuedAt: string
  /** Why the service refused it. */
  problem: Problem | null
  /** Why the last try came to nothing. */
  trouble: string | null
  reply: unknown
}

/** An item of the outbox as the pages show it. */
export interface OutboxItem extends Pick<OutboxRow, 'id' | 'site' | 'positionId' | 'state'> {
  kind: WriteKind
  subjectText: string
  address: string
  queuedAt: string
  /** When it was sent, or last tried; null where it was not tried yet. */
  lastAt: string | null
  problem: Problem | null
  trouble: string | null
  /** It waits for an earlier item of the same position. */
  behind: boolean
  /** Its form can be opened again with what was typed. */
  canReopen: boolean
}

function place(id: string): string {
  return `outbox/${id}`
}

export function sealContent(holder: Holder, id: string, content: OutboxContent): Uint8Array {
  return seal(holder.key, place(id), content)
}

export function openContent(holder: Holder, row: Pick<OutboxRow, 'id' | 'sealed'>): OutboxContent {
  return open(holder.key, place(row.id), row.sealed)
}

export function sealFile(holder: Holder, id: string, bytes: Uint8Array): Uint8Array {
  return sealBytes(holder.key, `bytes/${id}`, bytes)
}

/** The file that an item carries, such as a photo that is not sent yet; null where it carries none. */
export async function fileOf(holder: Holder, id: string): Promise<Blob | null> {
  const row = await deviceBook.bytes.get(id)
  return row ? new Blob([openBytes(holder.key, `bytes/${id}`, row.sealed)], { type: row.type }) : null
}

/** Everything in the outbox of this person, in the order of writing. */
export async function itemsOf(holder: Holder): Promise<OutboxItem[]> {
  const rows = await deviceBook.outbox.where({ personId: holder.personId }).sortBy('seq')
  return rows.map((row) => {
    const { id, site, positionId, state, atMs } = row
    const { kind, subjectText, address, queuedAt, problem, trouble, typed } = openContent(holder, row)
    return {
      id,
      site,
      positionId,
      state,
      kind,
      subjectText,
      address,
      queuedAt,
      problem,
      trouble,
      lastAt: atMs === 0 ? null : new Date(atMs).toISOString(),
      behind: state === 'waiting' && standsBehind(rows, row),
      canReopen: typed !== null,
    }
  })
}

/** Within a transaction: takes the name of somebody with nothing left to send off the device. */
export async function forgetNameWhenDone(personId: string): Promise<void> {
  const open = await deviceBook.outbox
    .where({ personId })
    .filter(({ state }) => state !== 'sent')
    .count()
  if (open === 0) await deviceBook.people.delete(personId)
}

/** Other people with work on this device that is not sent: their names and how much, nothing else. */
export async function othersWaiting(personId: string): Promise<{ id: string; name: string; count: number }[]> {
  const people = await deviceBook.people.filter(({ id }) => id !== personId).toArray()
  return await Promise.all(
    people.map(async ({ id, name }) => ({
      id,
      name,
      count: await deviceBook.outbox
        .where({ personId: id })
        .filter(({ state }) => state !== 'sent')
        .count(),
    })),
  )
}
