import { NativeSelect, Textarea } from '@mantine/core'
import { OldGrease } from '@shaftbook/contract/round-walks'
import { ChoiceField } from '../../ui/choice-field.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import { oldGreaseWords } from './round-words.ts'
import type { StopEntry, StopFaults } from './walk-state.ts'
import classes from './walk.module.css'

interface StopSeenProps {
  entry: StopEntry
  faults: StopFaults
  greased: boolean
  onChange: (part: Partial<StopEntry>) => void
}

/** What was seen at the stop. */
export function StopSeen({ entry, faults, greased, onChange }: StopSeenProps) {
  return (
    <section className={classes.part} aria-label="Seen">
      {greased && (
        <>
          <NativeSelect
            size="touch"
            label="Old grease seen"
            value={entry.oldGrease}
            onChange={(event) => onChange({ oldGrease: event.currentTarget.value as StopEntry['oldGrease'] })}
            data={[
              { value: '', label: 'Not looked at' },
              ...OldGrease.options.map((value) => ({ value, label: oldGreaseWords[value] })),
            ]}
          />
          <ChoiceField
            legend="Relief closed again"
            layout="line"
            value={entry.relief}
            onChange={(relief) => onChange({ relief })}
            choices={[
              { value: 'closed', label: 'Yes' },
              { value: 'open', label: 'No, left open' },
            ]}
          />
        </>
      )}
      <NumberField
        size="touch"
        name="temperatureC"
        label="Temperature of the housing, if measured"
        unit="°C"
        text={entry.temperatureC}
        error={faults.temperatureC}
        onText={(temperatureC) => onChange({ temperatureC })}
      />
      <Textarea
        size="touch"
        label="Note"
        autosize
        minRows={1}
        value={entry.note}
        onChange={(event) => onChange({ note: event.currentTarget.value })}
      />
    </section>
  )
}
