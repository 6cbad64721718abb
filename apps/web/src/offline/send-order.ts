import { NoAnswerError, ProblemError } from '../api/problem-error.ts'
import type { WriteState } from './device-book.ts'

/** What the order of sending goes by. */
export interface Queued {
  seq: number
  site: string
  positionId: string | null
  state: WriteState
}

/**
 * The next item to send, or undefined: in the order of writing, one after the other, but nothing of a position while
 * something earlier of the same position is refused or was tried in vain. `tried` holds what this run has tried already.
 */
export function nextToSend<Item extends Queued>(items: readonly Item[], tried: ReadonlySet<number>): Item | undefined {
  const held = new Set<string>()
  for (const item of items.toSorted((a, b) => a.seq - b.seq)) {
    if (item.state === 'sent') continue
    const place = item.positionId === null ? null : `${item.site}/${item.positionId}`
    const free = place === null || !held.has(place)
    if (item.state === 'waiting' && free && !tried.has(item.seq)) return item
    if (place !== null) held.add(place)
  }
  return undefined
}

/** True where something earlier of the same position stands in the way of this item. */
export function standsBehind(items: readonly Queued[], item: Queued): boolean {
  return items.some(
    (other) =>
      other.seq < item.seq &&
      other.state !== 'sent' &&
      other.positionId !== null &&
      other.positionId === item.positionId &&
      other.site === item.site,
  )
}

/**
 * What an attempt that failed means. `refused`: a person must mend it. `later`: this item waits, others may go on.
 * `silent` and `sign-in`: nothing goes on until there is a network, or until the person signs in again.
 */
export type Failure = 'refused' | 'later' | 'silent' | 'sign-in'

export function failureOf(error: unknown): Failure {
  if (error instanceof NoAnswerError) return 'silent'
  if (!(error instanceof ProblemError)) return 'later'
  const { status } = error.problem
  if (status === 401) return 'sign-in'
  if (status === 429) return 'silent'
  return status >= 500 ? 'later' : 'refused'
}

/** How long until the next try, by how many tries in a row came to nothing: 5 s, doubling, 5 minutes at most. */
export function pauseMs(failedTries: number): number {
  return Math.min(5_000 * 2 ** Math.max(0, failedTries - 1), 300_000)
}
