import { Button, NativeSelect, Textarea } from '@mantine/core'
import type { RoundStop } from '@shaftbook/contract/rounds'
import { parseNumber } from '@shaftbook/bearing/number-text'
import { GreaseMark, greasePlaces } from '../../ui/grease-mark.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import { gunChoices, type SiteGrease } from './gun-choices.ts'
import { entryWords } from './round-words.ts'
import { overdoseCautions, plannedStrokes } from './stop-strokes.ts'
import type { WalkWork } from './use-walk.ts'
import { isWrongGun, typedDoseG, type StopEntry, type StopFaults, type Walk } from './walk-state.ts'
import { WrongGun } from './wrong-gun.tsx'
import classes from './walk.module.css'

interface StopDoseProps {
  stop: RoundStop
  entry: StopEntry
  walk: Walk
  work: WalkWork
  greases: readonly SiteGrease[]
  faults: StopFaults
  onChange: (part: Partial<StopEntry>) => void
}

/** What goes in, by which gun; the wrong gun is stopped here, before the dose. */
export function StopDose({ stop, entry, walk, work, greases, faults, onChange }: StopDoseProps) {
  const { gun, guns } = work
  const place = greasePlaces(greases).get(stop.greaseId ?? '') ?? 0
  return (
    <section className={classes.part} aria-label="Dose">
      <p className={classes.dose}>
        {stop.greaseName === null ? (
          <strong>No grease plan</strong>
        ) : (
          <GreaseMark name={stop.greaseName} place={place} />
        )}
        <span className={classes.amount}>{plannedText(stop, gun?.gramsPerStroke)}</span>
        {stop.entry && <span className={classes.soft}>{entryWords[stop.entry]}</span>}
      </p>
      <NativeSelect
        size="touch"
        label="Gun in your hand"
        value={walk.gunId ?? ''}
        onChange={(event) => {
          work.keep({
            ...walk,
            gunId: event.currentTarget.value || null,
            entries: { ...walk.entries, [stop.id]: { ...entry, strokes: '' } },
          })
        }}
        data={gunChoices(guns)}
      />
      {gun && isWrongGun(stop, gun) ? (
        <WrongGun stop={stop} gun={gun} work={work} walk={walk} greases={greases} />
      ) : (
        <GivenDose stop={stop} entry={entry} work={work} faults={faults} onChange={onChange} />
      )}
    </section>
  )
}

function plannedText({ doseG }: RoundStop, gramsPerStroke: number | undefined): string {
  if (doseG === null) return 'no planned dose'
  const strokes = gramsPerStroke === undefined ? null : plannedStrokes(doseG, gramsPerStroke)
  return strokes === null ? `${doseG} g` : `${strokes} ${strokes === 1 ? 'stroke' : 'strokes'} (${doseG} g)`
}

function GivenDose({
  stop,
  entry,
  work,
  faults,
  onChange,
}: Pick<StopDoseProps, 'stop' | 'entry' | 'work' | 'faults' | 'onChange'>) {
  const { gun } = work
  const given = typedDoseG(entry, gun)
  const cautions = given === undefined ? [] : overdoseCautions(given, stop.doseG)
  const step = (by: number): void => onChange({ strokes: String(Math.max(1, (parseNumber(entry.strokes) ?? 0) + by)) })
  return (
    <>
      {gun ? (
        <div className={classes.strokes}>
          <Button size="touch" variant="default" aria-label="One stroke less" onClick={() => step(-1)}>
            −
          </Button>
          <NumberField
            size="touch"
            name="strokes"
            label="Strokes given"
            unit="×"
            text={entry.strokes}
            error={faults.strokes}
            onText={(strokes) => onChange({ strokes })}
          />
          <Button size="touch" variant="default" aria-label="One stroke more" onClick={() => step(1)}>
            +
          </Button>
          <p className={classes.given}>{given !== undefined && `= ${given} g`}</p>
        </div>
      ) : (
        <NumberField
          size="touch"
          name="grams"
          label="Dose given"
          unit="g"
          text={entry.grams}
          error={faults.grams}
          onText={(grams) => onChange({ grams })}
        />
      )}
      {cautions.length > 0 && (
        <fieldset className={classes.question} aria-label="More than the plan">
          <p>{cautions.join(' ')}</p>
          <label className={classes.tick}>
            <input
              type="checkbox"
              name="overdoseConfirmed"
              checked={entry.overdoseConfirmed}
              onChange={(event) => onChange({ overdoseConfirmed: event.currentTarget.checked })}
            />
            Yes, {given} g went in
          </label>
          {faults.overdoseConfirmed && <p className={classes.fault}>{faults.overdoseConfirmed}</p>}
          <Textarea
            size="touch"
            name="extraReason"
            label="Why more than the plan"
            autosize
            minRows={1}
            value={entry.extraReason}
            error={faults.extraReason}
            onChange={(event) => onChange({ extraReason: event.currentTarget.value })}
          />
        </fieldset>
      )}
      {cautions.length === 0 &&
        given !== undefined &&
        stop.doseG !== null &&
        isExtra(stop.doseG, given, gun?.gramsPerStroke) && (
          <Textarea
            size="touch"
            name="extraReason"
            label="Extra dose: why, if you know"
            autosize
            minRows={1}
            value={entry.extraReason}
            onChange={(event) => onChange({ extraReason: event.currentTarget.value })}
          />
        )}
    </>
  )
}

/** More than the whole strokes that the plan asks for. */
function isExtra(plannedG: number, givenG: number, gramsPerStroke = 0): boolean {
  return givenG >= plannedG + Math.max(gramsPerStroke, 0.1)
}
