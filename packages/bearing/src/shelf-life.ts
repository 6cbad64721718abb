import { addMonths, dayNumber, type PlainDate } from './plain-date.ts'
import { formula, type Sourced } from './source.ts'

/** Default months on the shelf: dry, 20 to 25 °C, unopened, flat. A site replaces them by its own. */
export const shelfLifeMonths = Object.freeze({
  bearing: 36,
  'sealed-bearing': 24,
  grease: 36,
  'opened-grease': 12,
  seal: 60,
})
export type ShelfItem = 'bearing' | 'sealed-bearing' | 'grease' | 'seal'

export interface ShelfLife extends Sourced {
  expires: PlainDate
  verdict: 'good' | 'expired'
}

/**
 * Last day on the shelf: pack date plus the months of its kind; opened grease the earlier of that and 12 months from
 * opening. Past it, only the engineer releases it, with the date of an inspection.
 */
export function shelfLife(
  item: ShelfItem,
  dates: { packed: PlainDate; opened?: PlainDate | null; today: PlainDate },
  months: Readonly<Record<ShelfItem | 'opened-grease', number>> = shelfLifeMonths,
): ShelfLife {
  const unopened = addMonths(dates.packed, months[item])
  const opened = item === 'grease' && dates.opened ? addMonths(dates.opened, months['opened-grease']) : unopened
  const expires = dayNumber(opened) < dayNumber(unopened) ? opened : unopened
  const expired = dayNumber(dates.today, 'today') > dayNumber(expires)
  return {
    expires,
    verdict: expired ? 'expired' : 'good',
    source: formula('pack or opening date plus the months of its kind'),
    rule: 'R-STOCK',
    cautions: expired ? ['Past its shelf life: only the engineer releases it, with an inspection date.'] : [],
  }
}
