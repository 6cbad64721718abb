import { formatCount } from '../../lib/format-count.ts'
import { useSheet } from './sheet-context.ts'
import { SheetNumber, SheetText } from './sheet-fields.tsx'
import classes from './sheet.module.css'

/** What the machine's hour meter shows, or why it was not read. */
export function HoursFields() {
  const { place, sheet } = useSheet()
  const { meter } = place
  if (!meter) return <p className={classes.hint}>The machine has no hour meter: the run hours are estimated.</p>
  const last = meter.lastTotalHours === null ? undefined : `Last known: ${formatCount(meter.lastTotalHours)} run hours`
  return (
    <>
      <SheetNumber at="meterShowsHours" label={`${meter.name} shows`} description={last} />
      {sheet.meterShowsHours.trim() === '' && (
        <SheetText
          at="noHoursReason"
          label="Or why it was not read"
          description="Run hours then have to be estimated"
        />
      )}
    </>
  )
}
