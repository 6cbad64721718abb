import { Autocomplete, Textarea, TextInput } from '@mantine/core'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { EndKind } from '@shaftbook/contract/removals'
import type { ReactNode } from 'react'
import { failureModes } from '../../lib/failure-modes.ts'
import { formatCount } from '../../lib/format-count.ts'
import { Caution } from '../../ui/caution.tsx'
import { ChoiceField } from '../../ui/choice-field.tsx'
import { ModeTree } from '../../ui/mode-tree.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { endWords } from './end-words.ts'
import { endQuestion, type Faults, type RemovalEntry } from './removal-entry.ts'
import classes from './removals.module.css'

interface SectionProps {
  entry: RemovalEntry
  change: (part: Partial<RemovalEntry>) => void
  faults: Faults
}

/** When it came out, at how many hours, and what is dangerous while it does. */
export function WhenSection({ entry, change, faults, meter }: SectionProps & { meter: PositionOverview['meter'] }) {
  return (
    <Part title="Taking it out">
      <Caution title="The bearing jumps off its taper, and hardened steel splinters">
        <ul>
          <li>Every source of energy is off, locked and proved dead; shaft and rotor are blocked.</li>
          <li>
            Turn the nut back by some turns and leave it on until the taper has broken loose. Stand clear of the axis.
          </li>
          <li>Never strike a hardened ring or nut: soft drift, eye and face protection.</li>
        </ul>
      </Caution>
      <TextInput
        size="touch"
        type="datetime-local"
        label="Taken out"
        description="Day and time by the clock of the plant"
        withAsterisk
        value={entry.removedAt}
        error={faults.removedAt}
        onChange={(event) => change({ removedAt: event.currentTarget.value })}
      />
      {meter ? <HoursFields entry={entry} change={change} faults={faults} meter={meter} /> : <NoMeter />}
    </Part>
  )
}

function NoMeter() {
  return <p className={classes.soft}>The machine has no hour meter: the run hours are estimated from its usual use.</p>
}

function HoursFields({
  entry,
  change,
  faults,
  meter,
}: SectionProps & { meter: NonNullable<PositionOverview['meter']> }) {
  const last = meter.lastTotalHours === null ? undefined : `Last known: ${formatCount(meter.lastTotalHours)} run hours`
  return (
    <div className={classes.pair}>
      <NumberField
        size="touch"
        label={`${meter.name} shows`}
        unit="h"
        description={last}
        text={entry.meterShowsHours}
        error={faults.meterShowsHours}
        onText={(meterShowsHours) => change({ meterShowsHours })}
      />
      {entry.meterShowsHours.trim() === '' && (
        <TextInput
          size="touch"
          label="Or why it was not read"
          description="The run hours are then estimated"
          value={entry.noHoursReason}
          error={faults.noHoursReason}
          onChange={(event) => change({ noHoursReason: event.currentTarget.value, meterShowsHours: '' })}
        />
      )}
    </div>
  )
}

/** What was wrong with the record that is corrected. */
export function ReasonSection({ entry, change, faults }: SectionProps) {
  return (
    <Part title="Why it is corrected">
      <Textarea
        size="touch"
        label="What was wrong, and how do you know?"
        description="Time and hours of the removal stay as they were signed"
        withAsterisk
        autosize
        minRows={2}
        value={entry.correctionReason}
        error={faults.correctionReason}
        onChange={(event) => change({ correctionReason: event.currentTarget.value })}
      />
    </Part>
  )
}

const noticedBy = [
  'noise',
  'vibration round',
  'vibration alarm',
  'temperature',
  'seized',
  'seen at an inspection',
  'planned',
]

/** How the stay ended. */
export function EndSection({ entry, change, faults }: SectionProps) {
  const question = endQuestion(entry)
  return (
    <Part title="How it ended">
      <Autocomplete
        size="touch"
        label="How was it noticed?"
        description="What led to the change: choose or write"
        data={noticedBy}
        value={entry.detection}
        error={faults.detection}
        onChange={(detection) => change({ detection })}
      />
      <ChoiceField
        legend="It is"
        choices={EndKind.options.map((value) => ({
          value,
          label: endWords[value].word,
          hint: endWords[value].meaning,
        }))}
        value={entry.endKind}
        onChange={(endKind) => change({ endKind })}
        error={faults.endKind}
      />
      {question && <output className={classes.question}>{question}</output>}
    </Part>
  )
}

/** What was seen on the bearing, and why it came to that. */
export function FoundSection({ entry, change, faults, photos }: SectionProps & { photos?: ReactNode }) {
  return (
    <Part title="What was found">
      <Caution title="Look before you clean">
        Note how the grease looks, where rust, dents or cracks are, and on which side, before anything is washed. Keep
        the bearing, labelled with position and date: it is the evidence.
      </Caution>
      {photos}
      {entry.endKind === 'failed' && <ModeFields entry={entry} change={change} faults={faults} />}
      <Textarea
        size="touch"
        label="What do you see?"
        description="Raceways, rollers, cage, bore, grease, seals"
        autosize
        minRows={2}
        maxRows={8}
        value={entry.evidence}
        error={faults.evidence}
        onChange={(event) => change({ evidence: event.currentTarget.value })}
      />
      <TextInput
        size="touch"
        label={entry.endKind === 'failed' ? 'Cause, if it is known' : 'Why it was taken out'}
        description={entry.endKind === 'failed' ? 'Why it came to that: the mode says only what happened' : undefined}
        value={entry.cause}
        error={faults.cause}
        onChange={(event) => change({ cause: event.currentTarget.value })}
      />
      <TextInput
        size="touch"
        label="Looked at by"
        withAsterisk
        value={entry.observer}
        error={faults.observer}
        onChange={(event) => change({ observer: event.currentTarget.value })}
      />
    </Part>
  )
}

function ModeFields({ entry, change, faults }: SectionProps) {
  return (
    <>
      <ChoiceField
        legend="Was the failure mode found out?"
        layout="line"
        choices={[
          { value: 'yes', label: 'Yes, it is chosen here' },
          { value: 'no', label: 'Not found out' },
        ]}
        value={entry.found}
        onChange={(found) => change({ found })}
        error={faults.found}
      />
      {entry.found === 'yes' && (
        <div data-invalid={faults.modeClause ? true : undefined}>
          <ModeTree
            legend="Failure mode by ISO 15243"
            nodes={failureModes}
            value={entry.modeClause}
            onChange={(modeClause) => change({ modeClause })}
            error={faults.modeClause}
          />
        </div>
      )}
    </>
  )
}

function Part({ title, children }: { title: string; children: ReactNode }) {
  return (
    <PagePart title={title}>
      <div className={classes.fields}>{children}</div>
    </PagePart>
  )
}
