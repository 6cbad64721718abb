import type { GreaseInterval, IntervalInput } from '@shaftbook/bearing/grease-interval'
import { intervalOf } from '@shaftbook/contract/plan-duty'
import { formatCount } from '../../lib/format-count.ts'
import classes from './greasing-dialog.module.css'

/** An interval with every factor that it is made of. */
export function FactorTable({ duty }: { duty: IntervalInput }) {
  const interval = intervalOf(duty)
  if (interval.kind === 'refused') return <p className={classes.ask}>{interval.sentence}</p>
  return (
    <>
      <table className={classes.factors}>
        <caption className="visually-hidden">Factors of the greasing interval</caption>
        <thead>
          <tr>
            <th scope="col">Factor</th>
            <th scope="col">Duty</th>
            <th scope="col">×</th>
          </tr>
        </thead>
        <tbody>
          {interval.kind === 'interval' && (
            <tr>
              <th scope="row">base</th>
              <td>
                {duty.speedRpm} rev/min, bore {duty.boreMm} mm
              </td>
              <td>{formatCount(interval.baseHours)} h</td>
            </tr>
          )}
          {interval.factors.map(({ name, label, factor }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{label}</td>
              <td>{shown(factor)}</td>
            </tr>
          ))}
        </tbody>
        <IntervalFoot interval={interval} />
      </table>
      <p className={classes.soft}>
        {interval.source.title} ({interval.rule}). {interval.cautions.join(' ')}
      </p>
    </>
  )
}

function IntervalFoot({ interval }: { interval: GreaseInterval }) {
  if (interval.kind === 'outside-formula')
    return (
      <tfoot>
        <tr>
          <td colSpan={3}>{interval.sentence}</td>
        </tr>
      </tfoot>
    )
  return (
    <tfoot>
      <tr>
        <th scope="row">interval</th>
        <td>{interval.capped ? 'held at one year of running' : `all factors together ${shown(interval.product)}`}</td>
        <td>{formatCount(interval.intervalHours)} h</td>
      </tr>
    </tfoot>
  )
}

function shown(factor: number): string {
  return String(Number(factor.toPrecision(3)))
}
