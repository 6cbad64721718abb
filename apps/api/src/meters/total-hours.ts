import { DomainError, fieldError } from '../domain-error.ts'

/** A reading that counts, or an exchange: from then on the new meter's display counts. */
export interface CountingReading {
  readonly id: string
  readonly kind: 'reading' | 'exchange'
  readonly readAt: Date
  readonly shownHours: number
  readonly newMeterShowsHours: number | null
  /** The machine's hours over all exchanges and rollovers. */
  readonly totalHours: number
}

/** The readings that count next before and next after a moment. */
export interface Neighbours {
  readonly before: CountingReading | undefined
  readonly after: CountingReading | undefined
}

export interface Entry {
  readonly readAt: Date
  readonly shownHours: number
  /** At an exchange: where the new meter starts. */
  readonly newMeterShowsHours: number | null
}

/** How a refusal speaks: the field at fault, and how a day is written. */
export interface Telling {
  readonly path: string
  readonly day: (at: Date) => string
}

/** A machine can't run longer than the clock; two readings taken at different times of a day are given a day's grace. */
const graceHours = 24

/**
 * The machine's hours (h) at a reading, from the readings next to it. A display that shows less than before is refused,
 * unless it rolled over (at `rolloverAtHours`) or the meter was exchanged in between; so is one that ran faster than time.
 */
export function totalHoursOf(entry: Entry, next: Neighbours, rolloverAtHours: number | null, tell: Telling): number {
  const { before, after } = next
  const total = before
    ? before.totalHours + ran(before, entry, rolloverAtHours, tell)
    : after
      ? after.totalHours - ran(entry, after, rolloverAtHours, tell)
      : entry.shownHours
  if (total < 0) throw backwards(entry, after, tell)
  if (after) checkAfter(entry, total, after, tell)
  return Math.round(total * 1e6) / 1e6
}

function checkAfter(entry: Entry, total: number, after: CountingReading, tell: Telling): void {
  if (total > after.totalHours + 1e-6) throw backwards(entry, after, tell)
  const { newMeterShowsHours } = entry
  if (newMeterShowsHours === null) return
  if (Math.abs(total + after.shownHours - newMeterShowsHours - after.totalHours) < 1e-6) return
  const message = `The meter was read on ${tell.day(after.readAt)}, after this exchange, and that reading counts from the old meter: correct it first.`
  throw fieldError('not-allowed-here', 'newMeterShowsHours', message)
}

type Shown = Pick<CountingReading, 'readAt' | 'shownHours' | 'newMeterShowsHours'>

/** Hours from one display to a later one. */
function ran(from: Shown, to: Shown, rolloverAtHours: number | null, tell: Telling): number {
  const start = from.newMeterShowsHours ?? from.shownHours
  const clockHours = (to.readAt.getTime() - from.readAt.getTime()) / 3_600_000 + graceHours
  const straight = to.shownHours - start
  if (straight > clockHours) {
    const shown = `${hours(start)} on ${tell.day(from.readAt)} and ${hours(to.shownHours)} on ${tell.day(to.readAt)}`
    const message = `The meter can't have run ${hours(straight)} in that time (${shown}): look at the number and the date again.`
    throw fieldError('not-allowed-here', tell.path, message)
  }
  if (straight >= 0) return straight
  const rolledOver = rolloverAtHours === null ? null : straight + rolloverAtHours
  if (rolledOver !== null && rolledOver >= 0 && rolledOver <= clockHours) return rolledOver
  const message = `The meter showed ${hours(start)} on ${tell.day(from.readAt)} and can't show ${hours(to.shownHours)} on ${tell.day(to.readAt)}: look at the number again, or enter the exchange of the meter first.`
  throw fieldError('meter-backwards', tell.path, message)
}

function backwards(entry: Entry, after: CountingReading | undefined, tell: Telling): DomainError {
  const later = after ? `${hours(after.shownHours)} on ${tell.day(after.readAt)}` : 'less later on'
  const message = `The meter can't show ${hours(entry.shownHours)} on ${tell.day(entry.readAt)}, since it showed ${later}: look at the number and the date again.`
  return fieldError('meter-backwards', tell.path, message)
}

function hours(value: number): string {
  return `${value.toLocaleString('en-GB', { maximumFractionDigits: 1 })} h`
}
