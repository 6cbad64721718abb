import type { MeterLine } from '@shaftbook/contract/meter-readings'
import { DomainError, fieldError } from '../domain-error.ts'
import { totalHoursOf, type CountingReading } from './total-hours.ts'

interface Line {
  readonly number: number
  readonly line: Pick<MeterLine, 'id' | 'kind' | 'shownHours' | 'newMeterShowsHours'>
  readonly readAt: Date
}

/**
 * The machine's hours (h) at each line of one meter, or why it is refused: judged in the order of time against the readings
 * that count (`around`, in their order) and the lines already taken, by the rules of a single reading.
 */
export function judgeLines<L extends Line>(
  lines: readonly L[],
  around: readonly CountingReading[],
  rolloverAtHours: number | null,
  day: (at: Date) => string,
): (L & { verdict: number | DomainError })[] {
  const counting = [...around]
  const judged = lines
    .toSorted((a, b) => a.readAt.getTime() - b.readAt.getTime() || a.number - b.number)
    .map((each) => {
      const verdict = judge(each, counting, rolloverAtHours, day)
      if (typeof verdict === 'number') {
        const { id, kind, shownHours, newMeterShowsHours } = each.line
        counting.push({ id, kind, readAt: each.readAt, shownHours, newMeterShowsHours, totalHours: verdict })
        counting.sort((a, b) => a.readAt.getTime() - b.readAt.getTime())
      }
      return { ...each, verdict }
    })
  return judged
}

function judge(
  { line, readAt }: Line,
  counting: readonly CountingReading[],
  rolloverAtHours: number | null,
  day: (at: Date) => string,
): number | DomainError {
  try {
    const before = counting.findLast((reading) => reading.readAt <= readAt)
    const after = counting.find((reading) => reading.readAt > readAt)
    if (before?.readAt.getTime() === readAt.getTime() && before.shownHours !== line.shownHours) {
      const message = `The meter was read at this very moment already (${before.shownHours} h): correct that reading instead.`
      throw fieldError('not-allowed-here', 'readAt', message)
    }
    const { shownHours, newMeterShowsHours } = line
    const tell = { path: 'shownHours', day }
    return totalHoursOf({ readAt, shownHours, newMeterShowsHours }, { before, after }, rolloverAtHours, tell)
  } catch (error) {
    if (error instanceof DomainError) return error
    throw error
  }
}
