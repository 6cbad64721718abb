import { NativeSelect, Textarea, TextInput } from '@mantine/core'
import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import { takesGrease } from '@shaftbook/contract/greasing'
import { useQuery } from '@tanstack/react-query'
import { useSite } from '../../session/site-access.tsx'
import { ChoiceField } from '../../ui/choice-field.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import { doseRemarks, type EntryFaults, type GreasingEntry } from './greasing-entry.ts'
import { greasesQuery } from './greasing-queries.ts'
import { taskActs } from './task-acts.ts'
import classes from './greasing-dialog.module.css'

interface EntryFieldsProps {
  task: GreaseTask
  entry: GreasingEntry
  onChange: (part: Partial<GreasingEntry>) => void
  faults: EntryFaults
  plannedG: number | null
  /** The name of the meter, where the machine has one. */
  meterName: string | null
  meterHint?: string | undefined
  /** Which grease is asked only where no plan says it. */
  asksGrease: boolean
  /** How a check ended is chosen when it is logged; a correction has it in its note. */
  asksFinding: boolean
}

/** What was done, when, what the meter showed, and a note. */
export function EntryFields(props: EntryFieldsProps) {
  const { task, entry, onChange, faults, meterName, meterHint, asksGrease, asksFinding } = props
  const { at, findings } = taskActs[task]
  return (
    <>
      {takesGrease(task) && <DoseField {...props} />}
      {takesGrease(task) && asksGrease && (
        <GreaseField value={entry.greaseId} error={faults.greaseId} onChange={onChange} />
      )}
      {asksFinding && findings.length > 0 && (
        <ChoiceField
          legend="How it stands"
          choices={findings.map((finding) => ({ value: finding, label: finding }))}
          value={entry.finding}
          onChange={(finding) => onChange({ finding })}
          error={faults.finding}
        />
      )}
      <TextInput
        size="touch"
        type="datetime-local"
        label={`${at}, by the clock of the plant`}
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

function DoseField({ task, entry, onChange, faults, plannedG }: EntryFieldsProps) {
  const refill = task === 'refill'
  const planned = refill ? `The lubricator holds ${plannedG} g` : `The plan says ${plannedG} g`
  return (
    <NumberField
      size="touch"
      label={refill ? 'Filled with' : 'Dose'}
      unit="g"
      required
      text={entry.doseG}
      onText={(doseG) => onChange({ doseG })}
      description={plannedG === null ? 'No plan gives a dose' : planned}
      error={faults.doseG}
      ask={refill ? undefined : doseRemarks(entry.doseG, plannedG).join(' ') || undefined}
    />
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
