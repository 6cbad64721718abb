import { Checkbox, NativeSelect } from '@mantine/core'
import { intervalLevels, type IntervalLevels } from '@shaftbook/bearing/grease-interval'
import { NumberField } from '../../ui/number-field.tsx'
import type { DutyEntry } from './duty-entry.ts'
import classes from './greasing-dialog.module.css'

const levelNames: Record<keyof IntervalLevels, string> = {
  temperature: 'Temperature of the outer ring',
  dirt: 'Dirt',
  moisture: 'Moisture',
  vibration: 'Vibration',
  shaft: 'Shaft',
  bearing: 'Kind of bearing',
}

interface DutyFieldsProps {
  entry: DutyEntry
  faults: Partial<Record<string, string>>
  onChange: (part: Partial<DutyEntry>) => void
}

/** The duty that an interval is computed from, each level with its factor. */
export function DutyFields({ entry, faults, onChange }: DutyFieldsProps) {
  return (
    <div className={classes.pair}>
      <NumberField
        label="Speed"
        unit="rev/min"
        required
        text={entry.speedRpm}
        onText={(speedRpm) => onChange({ speedRpm })}
        error={faults['speedRpm']}
      />
      <NumberField
        label="Load over rating, P/C"
        unit=""
        text={entry.loadOverRating}
        onText={(loadOverRating) => onChange({ loadOverRating })}
        description="Nothing, when it is not known"
        error={faults['loadOverRating']}
      />
      {(Object.keys(levelNames) as (keyof IntervalLevels)[]).map((name) => (
        <NativeSelect
          key={name}
          label={levelNames[name]}
          data={Object.entries(intervalLevels[name]).map(([value, { label, factor }]) => ({
            value,
            label: `${label} (× ${factor})`,
          }))}
          value={entry.levels[name]}
          onChange={(event) => onChange({ levels: { ...entry.levels, [name]: event.currentTarget.value } })}
        />
      ))}
      <Checkbox
        className={classes.check}
        label="The outer ring turns, or the load swings (× 0.5)"
        checked={entry.outerRingTurns}
        onChange={(event) => onChange({ outerRingTurns: event.currentTarget.checked })}
      />
      <Checkbox
        className={classes.check}
        label="May exceed one year of running"
        checked={entry.capLifted}
        onChange={(event) => onChange({ capLifted: event.currentTarget.checked })}
      />
    </div>
  )
}
