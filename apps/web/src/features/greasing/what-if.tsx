import { Button } from '@mantine/core'
import type { IntervalInput } from '@shaftbook/bearing/grease-interval'
import { createGreasePlan, type GunPlan } from '@shaftbook/contract/grease-plans'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useState } from 'react'
import { formatCount } from '../../lib/format-count.ts'
import { useSite } from '../../session/site-access.tsx'
import { comparedWords, dutyEntryOf, dutyTyped, firstLimit, hoursOf, type DutyEntry } from './duty-entry.ts'
import { DutyFields } from './duty-fields.tsx'
import { FactorTable } from './factor-table.tsx'
import classes from './greasing-dialog.module.css'

interface WhatIfProps {
  plan: GunPlan
  duty: IntervalInput
  place: PositionOverview
  onBack: () => void
  /** Starts a new plan from what was tried. */
  onTake: (duty: DutyEntry) => void
}

/** Another duty tried on a plan: its interval beside the present one. Nothing of it is stored. */
export function WhatIf({ plan, duty, place, onBack, onTake }: WhatIfProps) {
  const { may } = useSite()
  const [entry, setEntry] = useState(() => dutyEntryOf(duty))
  const tried = dutyTyped(entry, duty.boreMm)
  const hours = hoursOf(tried)
  const { hoursPerDay } = place.machine
  return (
    <>
      <p>Change a level and see what the interval would be. Nothing is stored.</p>
      <div className={`${classes.compare} ${classes.stays}`} aria-live="polite">
        <Limit label="The plan" hours={plan.intervalHours} months={plan.calendarMonths} hoursPerDay={hoursPerDay} />
        {hours === null ? (
          <div>
            <p className={classes.soft}>What if</p>
            <p className={classes.big}>no interval</p>
          </div>
        ) : (
          <Limit
            label={`What if: ${comparedWords(plan.intervalHours, hours)}`}
            hours={hours}
            months={plan.calendarMonths}
            hoursPerDay={hoursPerDay}
          />
        )}
      </div>
      <DutyFields entry={entry} faults={{}} onChange={(part) => setEntry({ ...entry, ...part })} />
      <FactorTable duty={tried} />
      <div className={classes.acts}>
        <Button variant="default" onClick={onBack}>
          Back to the plan
        </Button>
        {may(createGreasePlan) && (
          <Button onClick={() => onTake(entry)} disabled={hours === null}>
            Make a plan of this
          </Button>
        )}
      </div>
    </>
  )
}

interface LimitProps {
  label: string
  hours: number
  months: number
  hoursPerDay: number
}

function Limit({ label, hours, months, hoursPerDay }: LimitProps) {
  const first = firstLimit({ intervalHours: hours, calendarMonths: months }, hoursPerDay)
  const by = first.by === 'hours' ? `at ${formatCount(hoursPerDay)} h a day` : `by the calendar, ${months} months`
  return (
    <div>
      <p className={classes.soft}>{label}</p>
      <p className={classes.big}>{formatCount(hours)} run hours</p>
      <p className={classes.soft}>
        about every {formatCount(first.days)} days, {by}
      </p>
    </div>
  )
}
