import { formatCount } from '../lib/format-count.ts'
import { DefinitionList } from './definition-list.tsx'
import { endWords } from './life-end-mark.tsx'
import type { LifeFitment } from './life-strip-geometry.ts'
import { Timestamp } from './timestamp.tsx'
import { VerdictMark } from './verdict-mark.tsx'
import classes from './life-strip.module.css'

interface LifeDetailsProps {
  fitment: LifeFitment
  today: string
  timeZone: string | undefined
}

export function runHoursText(fitment: LifeFitment): string {
  if (fitment.runHours === undefined) return 'not known'
  const hours = formatCount(fitment.runHours)
  return fitment.runHoursEstimated ? `${hours} h, estimated` : `${hours} h`
}

/** The fitment that is pointed at on the strip. */
export function LifeDetails({ fitment, today, timeZone }: LifeDetailsProps) {
  const now = new Date(today)
  return (
    <div className={classes.details} aria-live="polite">
      <p className={classes.detailsTitle}>{fitment.bearing}</p>
      <DefinitionList
        layout="row"
        items={[
          { label: 'Fitted', value: <Timestamp at={fitment.fittedOn} timeZone={timeZone} now={now} dateOnly /> },
          { label: 'Mount', value: fitment.verdict ? <VerdictMark verdict={fitment.verdict} /> : 'no verdict' },
          {
            label: 'End',
            value: fitment.removedOn ? (
              <>
                {endWords[fitment.end ?? 'lost']}
                {fitment.mode && `: ${fitment.mode}`},{' '}
                <Timestamp at={fitment.removedOn} timeZone={timeZone} dateOnly relative={false} />
              </>
            ) : (
              'still fitted'
            ),
          },
          { label: 'Run hours', value: runHoursText(fitment) },
          { label: 'Greasings', value: String(fitment.greasedOn.length) },
        ]}
      />
    </div>
  )
}
