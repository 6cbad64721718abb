import { NativeSelect } from '@mantine/core'
import { createGreasePlan } from '@shaftbook/contract/grease-plans'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { useSite } from '../../session/site-access.tsx'
import { ChoiceField } from '../../ui/choice-field.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import { useNotice } from '../../ui/notice.tsx'
import type { DutyEntry } from './duty-entry.ts'
import { DutyFields } from './duty-fields.tsx'
import { entryWords } from './entry-words.ts'
import { FactorTable } from './factor-table.tsx'
import { greasesQuery } from './greasing-queries.ts'
import {
  dutyOfEntry,
  planBody,
  planFaults,
  startOfPlan,
  suggestedDoseG,
  type PlanEntry,
  type PlanFaults,
} from './plan-entry.ts'
import { PlanFormFoot } from './plan-form-foot.tsx'
import { ReviewField } from './review-field.tsx'
import { useFaults } from './use-faults.ts'
import classes from './greasing-dialog.module.css'

interface PlanFormProps {
  place: PositionOverview
  /** The duty that was tried on the plan before, to begin with. */
  tried?: DutyEntry | undefined
  onDone: () => void
}

/** A new grease plan: computed from the duty with every factor in view, or by hand with a reason. */
export function PlanForm({ place, tried, onDone }: PlanFormProps) {
  const { code } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const greases = useQuery(greasesQuery(code))
  const [id] = useState(() => newId())
  const [entry, setEntry] = useState(() => startOfPlan(place, tried))
  const { form, faults, show, showRefusal, clear } = useFaults<PlanFaults>()
  const change = (part: Partial<PlanEntry>): void => {
    setEntry({ ...entry, ...part })
    clear()
  }
  const save = useMutation({
    mutationFn: () => call(createGreasePlan, { params: { site: code }, body: planBody(id, entry, place) }),
    onSuccess: async () => {
      await invalidateSite(client, code)
      notice.done(`${place.position.tag} has a new plan of regreasing; the one before has ended.`)
      onDone()
    },
    onError: showRefusal,
  })
  const submit = (): void => {
    save.reset()
    if (!show(planFaults(entry, place))) save.mutate()
  }
  const suggested = suggestedDoseG(place, entry.entry)
  return (
    <div ref={form} className={classes.body}>
      <div className={classes.pair}>
        <NativeSelect
          label="Grease"
          required
          data={[
            { value: '', label: 'Choose the grease' },
            ...(greases.data?.items ?? []).map(({ id: value, name }) => ({ value, label: name })),
          ]}
          value={entry.greaseId}
          error={faults['greaseId']}
          onChange={(event) => change({ greaseId: event.currentTarget.value })}
        />
        <NativeSelect
          label="Grease goes in"
          data={Object.entries(entryWords).map(([value, label]) => ({ value, label }))}
          value={entry.entry}
          onChange={(event) => change({ entry: event.currentTarget.value as PlanEntry['entry'] })}
        />
        <NumberField
          label="Dose"
          unit="g"
          required
          text={entry.doseG}
          onText={(doseG) => change({ doseG })}
          description={`${suggested} g by the size of the bearing (R-DOSE)`}
          error={faults['doseG']}
        />
        <NumberField
          label="At the latest after"
          unit="months"
          required
          text={entry.calendarMonths}
          onText={(calendarMonths) => change({ calendarMonths })}
          error={faults['calendarMonths']}
        />
      </div>
      <ChoiceField
        legend="Interval in run hours"
        layout="line"
        choices={[
          { value: 'computed', label: 'From the duty' },
          { value: 'by-hand', label: 'By hand' },
        ]}
        value={entry.source}
        onChange={(source) => change({ source })}
      />
      {entry.source === 'computed' ? (
        <>
          <DutyFields entry={entry} faults={faults} onChange={change} />
          <FactorTable duty={dutyOfEntry(entry, place)} />
        </>
      ) : (
        <div className={classes.pair}>
          <NumberField
            label="Interval"
            unit="h"
            required
            text={entry.intervalHours}
            onText={(intervalHours) => change({ intervalHours })}
            error={faults['intervalHours']}
          />
          <ReviewField
            value={entry.reviewOn}
            error={faults['reviewOn']}
            onChange={(reviewOn) => change({ reviewOn })}
          />
        </div>
      )}
      <PlanFormFoot
        reason={entry.reason}
        reasonRequired={entry.source === 'by-hand'}
        reasonFault={faults['reason']}
        onReason={(reason) => change({ reason })}
        save={save}
        onSubmit={submit}
        onDone={onDone}
      />
    </div>
  )
}
