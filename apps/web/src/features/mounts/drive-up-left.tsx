import type { BladeStack } from '@shaftbook/bearing/feeler-blades'
import type { DriveUpGuided } from '@shaftbook/bearing/drive-up-guidance'
import type { TravelToGo } from '@shaftbook/bearing/drive-up-travel'
import type { GuidanceWarningCode } from '@shaftbook/bearing/drive-up-warnings'
import { memo } from 'react'
import { lengthDigits, lengthUnits, type LengthUnit } from '../../lib/length-units.ts'
import { useUnits } from '../../lib/units.tsx'
import { angleWords, ratioWords, travelWords } from './drive-up-words.ts'
import classes from './drive-up-guide.module.css'

interface DriveUpLeftProps {
  guided: DriveUpGuided
  bandSource: string
}

/** How far it is to the near edge, the aim and the far edge of the window: in reduction, clearance, travel and nut angle. */
export const DriveUpLeft = memo(function DriveUpLeft({ guided, bandSource }: DriveUpLeftProps) {
  const { unit, length } = useUnits()
  const { left, window, travel, now, smallestStepUm } = guided
  const { aim } = window
  const aimUm = aim === null ? null : guided.benchUm - aim.middleUm
  const angles = travel.toNear.angleDeg !== null
  return (
    <section className={classes.part}>
      <h4 className={classes.partTitle}>What is left</h4>
      <table className={classes.left}>
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">Where</span>
            </th>
            <th scope="col">Go on by, {lengthUnits[unit].symbol}</th>
            <th scope="col">Clearance then</th>
            <th scope="col">Travel, mm</th>
            {angles && <th scope="col">Nut</th>}
          </tr>
        </thead>
        <tbody>
          <LeftRow
            name="Near edge"
            leftUm={left.nearUm}
            thenUm={window.topUm}
            go={travel.toNear}
            unit={unit}
            angles={angles}
          />
          {left.aimUm !== null && aimUm !== null && travel.toAim && (
            <LeftRow name="Aim" leftUm={left.aimUm} thenUm={aimUm} go={travel.toAim} unit={unit} angles={angles} />
          )}
          <LeftRow
            name="Far edge"
            leftUm={left.farUm}
            thenUm={window.bottomUm}
            go={travel.toFar}
            unit={unit}
            angles={angles}
          />
        </tbody>
      </table>
      <ul className={classes.notes}>
        {now && (
          <li>
            Taken out so far: <strong>{length(now.reductionUm)}</strong> (row A {length(now.rowReductionUm.A)}, row B{' '}
            {length(now.rowReductionUm.B)}).
          </li>
        )}
        <li>{ratioWords(travel, bandSource)}</li>
        <li>A step of less than {length(smallestStepUm)} cannot be told from none with this gauge.</li>
      </ul>
    </section>
  )
})

interface LeftRowProps {
  name: string
  leftUm: number
  thenUm: number
  go: TravelToGo
  unit: LengthUnit
  angles: boolean
}

function LeftRow({ name, leftUm, thenUm, go, unit, angles }: LeftRowProps) {
  const passed = leftUm <= 0
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className={classes.strong}>{passed ? 'reached' : lengthDigits(leftUm, unit)}</td>
      <td>{lengthDigits(thenUm, unit)}</td>
      <td>{passed ? '–' : travelWords(go)}</td>
      {angles && <td>{passed ? '–' : angleWords(go)}</td>}
    </tr>
  )
}

/** Which stacks to try next, and which pair tells that the window is reached. */
export const DriveUpStacks = memo(function DriveUpStacks({ guided }: { guided: DriveUpGuided }) {
  const { unit } = useUnits()
  const { feelers, nextStacks } = guided
  if (feelers === null && nextStacks.length === 0) return null
  const next = nextStacks.slice(0, 3)
  return (
    <section className={classes.part}>
      <h4 className={classes.partTitle}>Feelers</h4>
      {feelers && (
        <p className={classes.goNoGo}>
          In the window, <StackName stack={feelers.goes} unit={unit} /> still goes and{' '}
          <StackName stack={feelers.stops} unit={unit} /> goes no longer.
        </p>
      )}
      {next.length > 0 && (
        <ol className={classes.stacks} aria-label="Stacks to try next">
          {next.map((stack, at) => (
            <li key={stack.totalUm}>
              <span className={classes.soft}>{at === 0 ? 'Try next' : 'then'}</span>
              <strong>{lengthDigits(stack.totalUm, unit)}</strong>
              <span className={classes.soft}>{bladeWords(stack, unit)}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  )
})

function StackName({ stack, unit }: { stack: BladeStack; unit: LengthUnit }) {
  const { length } = useUnits()
  return (
    <span className={classes.stack}>
      <strong>{length(stack.totalUm)}</strong> {stack.bladesUm.length > 1 && `(${bladeWords(stack, unit)})`}
    </span>
  )
}

function bladeWords({ bladesUm }: BladeStack, unit: LengthUnit): string {
  if (bladesUm.length === 1) return 'one blade'
  return bladesUm.map((um) => lengthDigits(um, unit)).join(' + ')
}

/** Warnings that hold for the whole drive-up, whatever the next reading says. */
const standing: readonly GuidanceWarningCode[] = [
  'no-residual-minimum',
  'residual-not-provable',
  'band-not-provable',
  'zero-not-verified',
  'blades-too-coarse',
  'bench-outside-class',
]

interface DriveUpWarningsProps {
  guided: DriveUpGuided
  /** Those of the readings now, or those that stand throughout. */
  about: 'now' | 'throughout'
}

/** What has to be looked at beside the advice. */
export function DriveUpWarnings({ guided, about }: DriveUpWarningsProps) {
  const warnings = guided.warnings.filter(({ code }) => standing.includes(code) === (about === 'throughout'))
  if (warnings.length === 0) return null
  return (
    <ul className={classes.warnings} aria-label={about === 'now' ? 'What to look at now' : 'What to keep in mind'}>
      {warnings.map(({ code, sentence }) => (
        <li key={code}>{sentence}</li>
      ))}
    </ul>
  )
}
