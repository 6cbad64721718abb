import type { PositionOverview } from '@shaftbook/contract/position-views'
import { formatCount } from '../../lib/format-count.ts'

type Meter = Pick<NonNullable<PositionOverview['meter']>, 'lastTotalHours' | 'lastReadAt'>

const hourMs = 3_600_000

/**
 * What is unlikely about the run hours that were typed, as a sentence; null where nothing is. It asks and never refuses: a
 * meter that was exchanged shows less than the run hours known.
 * @param shownHours what the meter shows, in h
 */
export function hoursQuestion(shownHours: number | null, meter: Meter, now: Date): string | null {
  const { lastTotalHours, lastReadAt } = meter
  if (shownHours === null || lastTotalHours === null) return null
  const known = `${formatCount(lastTotalHours)} h`
  if (shownHours < lastTotalHours) {
    const mark = Number.isInteger(shownHours)
      ? ''
      : ' A comma or a point is the decimal mark, thousands stand without one.'
    return `That is less than the ${known} last known: look at the meter again. Only an exchanged meter shows less.${mark}`
  }
  if (lastReadAt === null) return null
  const sinceHours = (now.getTime() - Date.parse(lastReadAt)) / hourMs
  const ranHours = shownHours - lastTotalHours
  if (ranHours <= sinceHours + 24) return null
  return `That is ${formatCount(ranHours)} h more than the ${known} last known, and only ${formatCount(Math.max(sinceHours, 0))} h have passed since: look at the meter again.`
}
