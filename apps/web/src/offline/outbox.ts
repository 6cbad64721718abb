import type { Endpoint, Reply } from '@shaftbook/contract/endpoint'
import type { Problem } from '@shaftbook/contract/problem'
import { v7 as newId } from 'uuid'
import { ProblemError } from '../api/problem-error.ts'
import { request, type AnyInput, type Input } from '../api/request.ts'
import { deviceBook } from './device-book.ts'
import { draftName, draftRow } from './drafts.ts'
import { findHolder, type Holder } from './holder.ts'
import { isSilent } from './network.ts'
import {
  fileOf,
  forgetNameWhenDone,
  openContent,
  sealContent,
  sealFile,
  type OutboxContent,
  type Typed,
  type WriteKind,
} from './outbox-rows.ts'
import { standsBehind } from './send-order.ts'
import { onAttempt, sendWaiting, type Attempt } from './sender.ts'
import { withSenderLock } from './sender-lock.ts'

/** A record to write. Only endpoints that answer a repeat with the first record: a crash in mid-send sends it again. */
export interface Write<E extends Endpoint> {
  /** Its name in the outbox; made where it is left out. */
  id?: string
  kind: WriteKind
  site: string
  /** Items of one position are sent one after the other. */
  positionId: string | null
  /** What it is about, as a person would say it: `Greasing of P-101`. */
  subjectText: string
  /** The page that it is made on, to open it again. */
  address: string
  endpoint: E
  /** What `call()` takes; a Blob as body where the endpoint takes a file. */
  input: Input<E>
  /** The form's value, kept until it is sent, so that a refusal can be mended. The draft of the same subject is taken away. */
  typed?: Typed
}

/** What became of a write so far. `waiting` is kept on this device and sent by itself. */
export type Outcome<R> =
  | { state: 'sent'; reply: R }
  | { state: 'refused'; problem: Problem }
  | { state: 'waiting'; why: 'no-network' | 'sign-in' | 'behind' | 'later' }

export interface Queued<R> {
  id: string
  /** How the first try ended; `waiting` too where it takes longer than a person waits at a form. */
  outcome: Promise<Outcome<R>>
}

/** How long a form waits for the service before it lets the person go on: hardly where it was silent just before. */
const patienceMs = 10_000
const silentPatienceMs = 1_500

/**
 * Writes a record into the outbox, then sends it. Fulfilled once it is on the disk: from then on it is not lost.
 * Without a key or a store on this device it is sent directly, and a silent network throws NoAnswerError.
 */
export async function queueWrite<E extends Endpoint>(write: Write<E>): Promise<Queued<Reply<E>>> {
  const id = write.id ?? newId()
  const holder = await findHolder()
  if (!holder) return { id, outcome: Promise.resolve(await sendDirectly(write)) }
  await keepItem(holder, id, write)
  return { id, outcome: outcomeOf(id) as Promise<Outcome<Reply<E>>> }
}

async function sendDirectly<E extends Endpoint>({ endpoint, input }: Write<E>): Promise<Outcome<Reply<E>>> {
  try {
    return { state: 'sent', reply: await request(endpoint, input) }
  } catch (error) {
    if (error instanceof ProblemError) return { state: 'refused', problem: error.problem }
    throw error
  }
}

async function keepItem<E extends Endpoint>(holder: Holder, id: string, write: Write<E>): Promise<void> {
  const { kind, site, positionId, subjectText, address, endpoint, typed = null } = write
  const { body, ...rest } = write.input as AnyInput
  const file = body instanceof Blob ? { type: body.type, bytes: new Uint8Array(await body.arrayBuffer()) } : null
  const content: OutboxContent = {
    kind,
    subjectText,
    address,
    typed,
    endpoint: { name: endpoint.name, method: endpoint.method as 'POST', path: endpoint.path },
    input: file ? rest : { ...rest, body },
    queuedAt: new Date().toISOString(),
    problem: null,
    trouble: null,
    reply: null,
  }
  const { personId, name } = holder
  const row = { id, personId, site, positionId, state: 'waiting' as const, atMs: 0 }
  const sealed = sealContent(holder, id, content)
  const sealedFile = file && { id, personId, type: file.type, sealed: sealFile(holder, id, file.bytes) }
  const { outbox, bytes, people, drafts } = deviceBook
  await deviceBook.transaction('rw', [outbox, bytes, people, drafts], async () => {
    await outbox.add({ ...row, sealed })
    if (sealedFile) await bytes.add(sealedFile)
    await people.put({ id: personId, name })
    if (typed) await drafts.delete(draftName({ personId, site, subject: typed.subject }))
  })
}

/** Sends what waits, and tells how the first try of this item ended. */
async function outcomeOf(id: string): Promise<Outcome<unknown>> {
  let stopListening: () => void = () => undefined
  const tried = new Promise<Attempt>((resolve) => {
    stopListening = onAttempt((triedId, attempt) => {
      if (triedId === id) resolve(attempt)
    })
  })
  const overslept = new Promise<void>((resolve) => setTimeout(resolve, isSilent() ? silentPatienceMs : patienceMs))
  const round = Promise.race([sendWaiting(), overslept])
  const outcome = await Promise.race([tried, round.then(() => outcomeInBook(id))])
  stopListening()
  return outcome
}

/** For an item that this tab did not try: another tab sent it, it stands behind another one, or it is not its turn yet. */
async function outcomeInBook(id: string): Promise<Outcome<unknown>> {
  const [holder, row] = [await findHolder(), await deviceBook.outbox.get({ id })]
  if (!holder || !row) return { state: 'waiting', why: 'later' }
  const { problem, reply } = openContent(holder, row)
  if (row.state === 'sent') return { state: 'sent', reply }
  if (row.state === 'refused' && problem) return { state: 'refused', problem }
  const rows = await deviceBook.outbox.where({ personId: holder.personId }).toArray()
  if (standsBehind(rows, row)) return { state: 'waiting', why: 'behind' }
  return { state: 'waiting', why: isSilent() ? 'no-network' : 'later' }
}

/** Takes an item that is not sent out of the outbox for good. False where it is sent already. */
export async function withdrawWrite(id: string): Promise<boolean> {
  return await whileNotSending(id, () => removeItem(id))
}

/** What became of an item that was to be opened again. `half-filled`: its form holds something else, which is not lost for it. */
export type Reopened =
  { state: 'open'; address: string } | { state: 'sent' } | { state: 'half-filled'; address: string }

/**
 * Gives the typed value back to its form as a draft and takes the item out. Where the form that sent it is open still, what
 * is typed there by now counts; otherwise a draft that lies there stays, and so does the item.
 */
export async function reopenWrite(id: string, { formIsOpen = false } = {}): Promise<Reopened> {
  const holder = await findHolder()
  let reopened = { state: 'sent' } as Reopened
  if (!holder) return reopened
  await whileNotSending(id, async () => {
    const row = await deviceBook.outbox.get({ id })
    if (!row || row.state === 'sent') return false
    const content = openContent(holder, row)
    const { address, typed } = content
    const key = typed && { personId: holder.personId, site: row.site, subject: typed.subject }
    const there = key !== null && (await deviceBook.drafts.get(draftName(key))) !== undefined
    if (there && !formIsOpen) {
      reopened = { state: 'half-filled', address }
      return false
    }
    if (key && !there) await deviceBook.drafts.put(draftRow(holder, key, typed, typed.value))
    reopened = { state: 'open', address }
    return await removeItem(id)
  })
  if (reopened.state === 'open') void sendWaiting()
  return reopened
}

/** Does the work in one transaction while the item is certainly not on its way. */
async function whileNotSending(id: string, work: () => Promise<boolean>): Promise<boolean> {
  const { outbox, bytes, people, drafts } = deviceBook
  const inOne = () => deviceBook.transaction('rw', [outbox, bytes, people, drafts], work)
  const row = await outbox.get({ id })
  if (!row) return false
  // what is refused is never sent again, so it need not wait for the sender
  const done = row.state === 'refused' ? await inOne() : await withSenderLock(inOne)
  return done
}

async function removeItem(id: string): Promise<boolean> {
  const row = await deviceBook.outbox.get({ id })
  if (!row || row.state === 'sent') return false
  await deviceBook.outbox.delete(row.seq)
  await deviceBook.bytes.delete(id)
  await forgetNameWhenDone(row.personId)
  return true
}

/** The file of an item that is not sent yet, such as a photo to show meanwhile. */
export async function waitingFile(id: string): Promise<Blob | null> {
  const holder = await findHolder()
  return holder ? await fileOf(holder, id) : null
}
