import { formatLength, formatLengthRange, type LengthUnit } from '../lib/length-units.ts'
import { targetWindow, type GaugeInput } from './clearance-gauge-geometry.ts'
import classes from './clearance-gauge.module.css'

interface GaugeTableProps {
  input: GaugeInput
  unit: LengthUnit
  classLabel: string | undefined
  bandSource: string | undefined
}

/** Everything on the gauge in words and numbers. */
export function GaugeTable({ input, unit, classLabel, bandSource }: GaugeTableProps) {
  const { benchUm, bandUm, classUm, residualMinUm, readings, meanUm, aimUm } = input
  const window = targetWindow(input)
  const say = (um: number | null) => (um === null ? 'not known' : formatLength(um, unit))
  const range = (low: number, high: number) => formatLengthRange(low, high, unit)
  const facts: [string, string][] = [
    ['Bench clearance', say(benchUm)],
    [
      `Range of class${classLabel ? ` ${classLabel}` : ''}`,
      classUm ? range(classUm.minUm, classUm.maxUm) : 'not known',
    ],
    ['Band (reduction)', bandUm ? range(bandUm.minUm, bandUm.maxUm) : 'not known'],
    ['Source of the band', bandSource ?? 'not known'],
    ['Target window', window ? range(window.bottomUm, window.topUm) : 'not known'],
    ...(aimUm ? [['Aim', range(aimUm.minUm, aimUm.maxUm)] satisfies [string, string]] : []),
    ['Residual minimum', say(residualMinUm)],
    ['Mean now', meanUm === null ? 'no reading yet' : say(meanUm)],
  ]
  return (
    <table className={classes.table}>
      <caption className="visually-hidden">Clearance gauge as a table</caption>
      <tbody>
        {facts.map(([name, value]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{value}</td>
          </tr>
        ))}
        {readings.map((reading, index) => (
          <tr key={index}>
            <th scope="row">
              {reading.step === undefined ? `Reading ${index + 1}` : `Step ${reading.step + 1}`}, row {reading.row}
            </th>
            <td>{formatLength(reading.um, unit)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
