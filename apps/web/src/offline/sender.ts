import { signOut } from '@shaftbook/contract/access'
import type { Endpoint } from '@shaftbook/contract/endpoint'
import type { Problem } from '@shaftbook/contract/problem'
import { NoAnswerError, ProblemError } from '../api/problem-error.ts'
import { request, type Input } from '../api/request.ts'
import { deviceBook, openDeviceBook, type OutboxRow } from './device-book.ts'
import { owesSignOut, readHolder, signOutIsPaid, type Holder } from './holder.ts'
import { isSilent, onNetworkChanged } from './network.ts'
import { fileOf, forgetNameWhenDone, openContent, sealContent } from './outbox-rows.ts'
import { failureOf, nextToSend, pauseMs, type Failure } from './send-order.ts'
import { withSenderLock } from './sender-lock.ts'

/** How a try ended. `sign-in`: the session is over, the person must sign in again. */
export type Attempt =
  | { state: 'sent'; reply: unknown }
  | { state: 'refused'; problem: Problem }
  | { state: 'waiting'; why: 'no-network' | 'sign-in' | 'behind' | 'later' }

/** What the sender does now, as the pages tell it. */
export type SenderPhase = 'resting' | 'sending' | 'sign-in'

const answerMs = 30_000
const fileMs = 120_000
/** Sent items that are still shown. */
const sentShown = 20

let phase: SenderPhase = 'resting'
let running: Promise<void> | null = null
let wanted = false
let failedTries = 0
let inFlight: AbortController | undefined
let timer: ReturnType<typeof setTimeout> | undefined
let onSent: (site: string) => void = () => undefined
const phaseListeners = new Set<() => void>()
const attemptListeners = new Set<(id: string, attempt: Attempt) => void>()

export function senderPhase(): SenderPhase {
  return phase
}

export function onSenderPhase(changed: () => void): () => void {
  phaseListeners.add(changed)
  return () => phaseListeners.delete(changed)
}

/** Calls back for every try of this tab. */
export function onAttempt(ended: (id: string, attempt: Attempt) => void): () => void {
  attemptListeners.add(ended)
  return () => attemptListeners.delete(ended)
}

function setPhase(next: SenderPhase): void {
  if (next === phase) return
  phase = next
  for (const changed of phaseListeners) changed()
}

/** Sends what waits, now and whenever there may be a network. Once, at the start. */
export function startSender(sent: (site: string) => void): void {
  onSent = sent
  const now = (): void => void sendWaiting()
  onNetworkChanged(() => {
    if (!isSilent()) now()
  })
  globalThis.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') now()
  })
  now()
}

/** Sends what waits, in order. A call while it goes on makes it look once more. */
export function sendWaiting(): Promise<void> {
  wanted = true
  running ??= (async () => {
    while (wanted) {
      wanted = false
      await sendRound()
    }
  })().finally(() => {
    running = null
  })
  return running
}

async function sendRound(): Promise<void> {
  clearTimeout(timer)
  if (!(await openDeviceBook())) return
  const end = await withSenderLock(async (renew) => {
    if (!(await payOwedSignOut())) return 'silent'
    return await sendInOrder(renew)
  }).catch((error: unknown): Failure => {
    // a fault of ours: what waits stays, and is tried again
    reportError(error)
    return 'later'
  })
  failedTries = end === 'done' ? 0 : failedTries + 1
  setPhase(end === 'sign-in' ? 'sign-in' : 'resting')
  // after a refusal of the session only a sign-in helps: that starts the sender again
  if (end === 'silent' || end === 'later') timer = setTimeout(() => void sendWaiting(), pauseMs(failedTries))
}

async function sendInOrder(renew: () => Promise<void>): Promise<Failure | 'done'> {
  const tried = new Set<number>()
  let end: Failure | 'done' = 'done'
  for (;;) {
    const holder = await readHolder()
    if (!holder) return 'done'
    const rows = await deviceBook.outbox.where({ personId: holder.personId }).toArray()
    const next = nextToSend(rows, tried)
    if (!next) return end
    tried.add(next.seq)
    await renew()
    setPhase('sending')
    const attempt = await tryToSend(holder, next).catch(waitAfterFault)
    for (const ended of attemptListeners) ended(next.id, attempt)
    if (attempt.state === 'sent') onSent(next.site)
    if (attempt.state !== 'waiting') continue
    if (attempt.why === 'no-network') return 'silent'
    if (attempt.why === 'sign-in') return 'sign-in'
    end = 'later'
  }
}

/** A fault of ours at one item keeps no other one waiting. */
function waitAfterFault(error: unknown): Attempt {
  reportError(error)
  return { state: 'waiting', why: 'later' }
}

/** Sends one item and writes down how that ended. */
async function tryToSend(holder: Holder, row: OutboxRow): Promise<Attempt> {
  const content = openContent(holder, row)
  const file = await fileOf(holder, row.id)
  const endpoint: Endpoint = { ...content.endpoint, access: 'signed-in', summary: '', replies: {} }
  const input = { ...content.input, ...(file && { body: file }) } as Input<Endpoint>
  inFlight = new AbortController()
  const signal = AbortSignal.any([inFlight.signal, AbortSignal.timeout(file ? fileMs : answerMs)])
  try {
    const reply = await request(endpoint, input, signal)
    const done = { ...content, input: {}, typed: null, problem: null, trouble: null, reply: reply ?? null }
    await settle(row, { state: 'sent', sealed: sealContent(holder, row.id, done) })
    return { state: 'sent', reply }
  } catch (error) {
    return await keepFailure(holder, row, error)
  }
}

async function keepFailure(holder: Holder, row: OutboxRow, error: unknown): Promise<Attempt> {
  const failure = failureOf(error)
  const content = openContent(holder, row)
  if (failure === 'refused' && error instanceof ProblemError) {
    const { problem } = error
    await settle(row, { state: 'refused', sealed: sealContent(holder, row.id, { ...content, problem, trouble: null }) })
    return { state: 'refused', problem }
  }
  const trouble = error instanceof ProblemError ? error.problem.detail : null
  await settle(row, { state: 'waiting', sealed: sealContent(holder, row.id, { ...content, trouble }) })
  return { state: 'waiting', why: failure === 'silent' ? 'no-network' : failure === 'sign-in' ? 'sign-in' : 'later' }
}

async function settle(row: OutboxRow, change: Pick<OutboxRow, 'state' | 'sealed'>): Promise<void> {
  await deviceBook.transaction('rw', deviceBook.outbox, deviceBook.bytes, deviceBook.people, async () => {
    await deviceBook.outbox.update(row.seq, { ...change, atMs: Date.now() })
    if (change.state !== 'sent') return
    await deviceBook.bytes.delete(row.id)
    await forgetNameWhenDone(row.personId)
    const sent = await deviceBook.outbox
      .where({ personId: row.personId })
      .filter(({ state }) => state === 'sent')
      .sortBy('seq')
    await deviceBook.outbox.bulkDelete(sent.slice(0, -sentShown).map(({ seq }) => seq))
  })
}

/** Breaks off what this tab is sending; it stays in the outbox. */
export function stopSending(): void {
  inFlight?.abort()
}

let paying: Promise<boolean> | undefined

/** Ends a session that was left on this device. False while the service is still silent. */
export function payOwedSignOut(): Promise<boolean> {
  // asked twice at once it is one request: a second answer would take the cookie of whoever signs in between
  paying ??= payOnce().finally(() => {
    paying = undefined
  })
  return paying
}

async function payOnce(): Promise<boolean> {
  if (!(await owesSignOut())) return true
  try {
    await request(signOut, {}, AbortSignal.timeout(answerMs))
  } catch (error) {
    if (error instanceof NoAnswerError) return false
    // a session that is over already needs no end
    if (!(error instanceof ProblemError && error.problem.status === 401)) return false
  }
  await signOutIsPaid()
  return true
}
