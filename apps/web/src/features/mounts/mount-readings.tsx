import type { MountRecord } from '@shaftbook/contract/mounts'
import { lengthUnits } from '../../lib/length-units.ts'
import { useUnits } from '../../lib/units.tsx'
import classes from './mount-record.module.css'

type Readings = MountRecord['readings']

/** Every reading as it was typed, and the means that follow. */
export function MountReadings({ record }: { record: MountRecord }) {
  const { length } = useUnits()
  const { judgement } = record
  const readings = record.readings.filter(({ moment }) => moment === 'bench' || moment === 'mounted')
  if (readings.length === 0)
    return (
      <p className={classes.soft}>
        No clearance was read{record.method === 'feeler' ? '' : `: ${methodWords[record.method]}`}.
      </p>
    )
  const numbers = [...new Set(readings.map(({ number }) => number))].sort((a, b) => a - b)
  const mean = (um: number | null): string => (um === null ? 'not both rows' : length(um))
  return (
    <table className={classes.readings}>
      <caption className="visually-hidden">Clearance readings as typed</caption>
      <thead>
        <tr>
          <th scope="col" rowSpan={2}>
            No.
          </th>
          <th scope="colgroup" colSpan={2}>
            Bench
          </th>
          <th scope="colgroup" colSpan={2}>
            Mounted
          </th>
        </tr>
        <tr>
          {['bench A', 'bench B', 'mounted A', 'mounted B'].map((name) => (
            <th key={name} scope="col">
              Row {name.slice(-1)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {numbers.map((number) => (
          <tr key={number}>
            <th scope="row">{number}</th>
            {(['bench', 'mounted'] as const).flatMap((moment) =>
              (['A', 'B'] as const).map((row) => (
                <td key={moment + row}>{typed(readings, { moment, row, number }) ?? '–'}</td>
              )),
            )}
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">Mean</th>
          <td colSpan={2}>{mean(judgement.benchMeanUm)}</td>
          <td colSpan={2}>{mean(judgement.mountedMeanUm)}</td>
        </tr>
      </tfoot>
    </table>
  )
}

function typed(readings: Readings, at: Pick<Readings[number], 'moment' | 'row' | 'number'>): string | undefined {
  const found = readings.find(
    ({ moment, row, number }) => moment === at.moment && row === at.row && number === at.number,
  )
  return found && `${found.typedValue} ${lengthUnits[found.typedUnit].symbol}`
}

export const methodWords = {
  feeler: 'clearance by feelers',
  'drive-up': 'axial travel',
  'by-feel': 'by feel',
} as const
