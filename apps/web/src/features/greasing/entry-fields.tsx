import { NativeSelect, Textarea, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useSite } from '../../session/site-access.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import { doseRemarks, type EntryFaults, type GreasingEntry } from './greasing-entry.ts'
import { greasesQuery } from './greasing-queries.ts'
import classes from './greasing-dialog.module.css'

interface EntryFieldsProps {
  entry: GreasingEntry
  onChange: (part: Partial<GreasingEntry>) => void
  faults: EntryFaults
  plannedG: number | null
  /** The name of the meter, where the machine has one. */
  meterName: string | null
  meterHint?: string | undefined
  /** Which grease is asked only where no plan says it. */
  asksGrease: boolean
}

/** Dose, time, meter and note of a greasing. */
export function EntryFields(props: EntryFieldsProps) {
  const { entry, onChange, faults, plannedG, meterName, meterHint, asksGrease } = props
  return (
    <>
      <NumberField
        size="touch"
        label="Dose"
        unit="g"
        required
        text={entry.doseG}
        onText={(doseG) => onChange({ doseG })}
        description={plannedG === null ? 'No plan gives a dose' : `The plan says ${plannedG} g`}
        error={faults.doseG}
        ask={doseRemarks(entry.doseG, plannedG).join(' ') || undefined}
      />
      {asksGrease && <GreaseField value={entry.greaseId} error={faults.greaseId} onChange={onChange} />}
      <TextInput
        size="touch"
        type="datetime-local"
        label="Greased at, by the clock of the plant"
        required
        value={entry.greasedAt}
        error={faults.greasedAt}
        onChange={(event) => onChange({ greasedAt: event.currentTarget.value })}
      />
      {meterName !== null && (
        <NumberField
          size="touch"
          label={`${meterName} shows, if read`}
          unit="h"
          text={entry.meterShowsHours}
          onText={(meterShowsHours) => onChange({ meterShowsHours })}
          description={meterHint}
          error={faults.meterShowsHours}
        />
      )}
      <Textarea
        size="touch"
        label="Note"
        className={classes.note}
        autosize
        minRows={2}
        value={entry.note}
        error={faults.note}
        onChange={(event) => onChange({ note: event.currentTarget.value })}
      />
    </>
  )
}

function GreaseField({
  value,
  error,
  onChange,
}: { value: string; error: string | undefined } & Pick<EntryFieldsProps, 'onChange'>) {
  const { code } = useSite()
  const greases = useQuery(greasesQuery(code))
  return (
    <NativeSelect
      size="touch"
      label="Grease"
      required
      description="Greases must not be mixed: read the label on the fitting."
      data={[
        { value: '', label: 'Choose the grease' },
        ...(greases.data?.items ?? []).map(({ id, name }) => ({ value: id, label: name })),
      ]}
      value={value}
      error={error}
      onChange={(event) => onChange({ greaseId: event.currentTarget.value })}
    />
  )
}
