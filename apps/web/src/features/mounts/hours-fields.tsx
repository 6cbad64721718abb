import { useState } from 'react'
import { formatCount } from '../../lib/format-count.ts'
import { hoursQuestion } from './hours-question.ts'
import { useSheet } from './sheet-context.ts'
import { SheetNumber, SheetText } from './sheet-fields.tsx'
import { numberOf } from './sheet-numbers.ts'
import classes from './sheet.module.css'

/** What the machine's hour meter shows, or why it was not read. */
export function HoursFields() {
  const { place, sheet } = useSheet()
  const [now] = useState(() => new Date())
  const { meter } = place
  if (!meter) return <p className={classes.hint}>The machine has no hour meter: the run hours are estimated.</p>
  const last = meter.lastTotalHours === null ? undefined : `Last known: ${formatCount(meter.lastTotalHours)} run hours`
  const ask = hoursQuestion(numberOf(sheet, 'meterShowsHours'), meter, now)
  return (
    <>
      <SheetNumber at="meterShowsHours" label={`${meter.name} shows`} description={last} ask={ask} />
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
