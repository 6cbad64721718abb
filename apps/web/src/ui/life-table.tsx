import { runHoursText } from './life-details.tsx'
import { endWords } from './life-end-mark.tsx'
import type { LifeFitment } from './life-strip-geometry.ts'
import { Timestamp } from './timestamp.tsx'
import { VerdictMark } from './verdict-mark.tsx'
import { ScrollBox } from './scroll-box.tsx'
import classes from './life-strip.module.css'

interface LifeTableProps {
  fitments: readonly LifeFitment[]
  timeZone: string | undefined
  tag: string
}

/** What the strip shows, as a table. */
export function LifeTable({ fitments, timeZone, tag }: LifeTableProps) {
  return (
    <ScrollBox label={`Fitments at ${tag}, as a table`}>
      <table className={classes.table}>
        <thead>
          <tr>
            <th scope="col">Bearing</th>
            <th scope="col">Fitted</th>
            <th scope="col">Mount</th>
            <th scope="col">Ended</th>
            <th scope="col">How</th>
            <th scope="col" className={classes.number}>
              Run hours
            </th>
            <th scope="col" className={classes.number}>
              Greasings
            </th>
          </tr>
        </thead>
        <tbody>
          {fitments.map((fitment) => (
            <tr key={fitment.id}>
              <th scope="row">{fitment.bearing}</th>
              <td>
                <Timestamp at={fitment.fittedOn} timeZone={timeZone} dateOnly relative={false} />
              </td>
              <td>{fitment.verdict ? <VerdictMark verdict={fitment.verdict} size="s" /> : 'no verdict'}</td>
              <td>
                {fitment.removedOn ? (
                  <Timestamp at={fitment.removedOn} timeZone={timeZone} dateOnly relative={false} />
                ) : (
                  'still fitted'
                )}
              </td>
              <td>
                {fitment.removedOn ? [endWords[fitment.end ?? 'lost'], fitment.mode].filter(Boolean).join(': ') : ''}
              </td>
              <td className={classes.number}>{runHoursText(fitment)}</td>
              <td className={classes.number}>{fitment.greasedOn.length}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  )
}
