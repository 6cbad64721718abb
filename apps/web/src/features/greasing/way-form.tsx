import { NativeSelect, TextInput } from '@mantine/core'
import { createGreasePlan } from '@shaftbook/contract/grease-plans'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { ProblemError } from '../../api/problem-error.ts'
import { useSite } from '../../session/site-access.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { greasesQuery } from './greasing-queries.ts'
import { PlanFormFoot } from './plan-form-foot.tsx'
import { ReviewField } from './review-field.tsx'
import { inForm, otherWays, startOfWay, wayBody, wayFaults, type OtherWay, type WayEntry } from './way-entry.ts'
import { wayWords } from './way-words.ts'
import { useFaults } from './use-faults.ts'
import classes from './greasing-dialog.module.css'

interface WayFormProps {
  way: OtherWay
  place: PositionOverview
  onDone: () => void
}

/** A plan of another way than the gun: what it needs, and nothing else. */
export function WayForm({ way, place, onDone }: WayFormProps) {
  const { code } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const before = place.plans.find((plan) => (way === 'sealed' ? plan.way === 'sealed' : plan.task === way))
  const [id] = useState(() => newId())
  const [entry, setEntry] = useState(() => startOfWay(way, before))
  const { form, faults, show, clear } = useFaults<Partial<Record<string, string>>>()
  const change = (part: Partial<WayEntry>): void => {
    setEntry({ ...entry, ...part })
    clear()
  }
  const save = useMutation({
    mutationFn: () =>
      call(createGreasePlan, { params: { site: code }, body: wayBody(id, place.position.id, way, entry) }),
    onSuccess: async () => {
      await invalidateSite(client, code)
      notice.done(`${place.position.tag}: ${wayWords[way].title.toLowerCase()} is planned.`)
      onDone()
    },
    onError: (error) => {
      if (!(error instanceof ProblemError)) return
      show(Object.fromEntries((error.problem.fields ?? []).map(({ path, message }) => [inForm(path), message])))
    },
  })
  const submit = (): void => {
    save.reset()
    if (!show(wayFaults(way, entry))) save.mutate()
  }
  return (
    <div ref={form} className={classes.body}>
      <p>{wayWords[way].hint}</p>
      <div className={classes.pair}>
        <WayFields way={way} entry={entry} faults={faults} change={change} />
        <ReviewField value={entry.reviewOn} error={faults['reviewOn']} onChange={(reviewOn) => change({ reviewOn })} />
      </div>
      <PlanFormFoot
        reason={entry.reason}
        reasonRequired={way === 'sealed'}
        reasonFault={faults['reason']}
        onReason={(reason) => change({ reason })}
        save={save}
        onSubmit={submit}
        onDone={onDone}
      />
    </div>
  )
}

interface WayFieldsProps {
  way: OtherWay
  entry: WayEntry
  faults: Partial<Record<string, string>>
  change: (part: Partial<WayEntry>) => void
}

function WayFields({ way, entry, faults, change }: WayFieldsProps) {
  const { fields } = otherWays[way]
  return (
    <>
      {fields.includes('grease') && <GreaseAmount entry={entry} faults={faults} change={change} />}
      {fields.includes('oil') && (
        <TextInput
          label="Oil and amount"
          description="As it stands on the machine, like Mineral oil VG 220, 1.2 l"
          value={entry.oil}
          error={faults['oil']}
          onChange={(event) => change({ oil: event.currentTarget.value })}
        />
      )}
      {fields.includes('days') && (
        <NumberField
          label="Every"
          unit="days"
          text={entry.days}
          onText={(days) => change({ days })}
          error={faults['days']}
        />
      )}
      {fields.includes('months') && (
        <NumberField
          label={way === 'refill' ? 'Empty after' : 'At the latest after'}
          unit="months"
          text={entry.months}
          onText={(months) => change({ months })}
          description={way === 'refill' ? 'As the lubricator is set; an empty one lubricates nothing' : undefined}
          error={faults['months']}
        />
      )}
      {fields.includes('hours') && (
        <NumberField
          label="And after run hours"
          unit="h"
          text={entry.hours}
          onText={(hours) => change({ hours })}
          description="Nothing, where only the calendar counts"
          error={faults['hours']}
        />
      )}
    </>
  )
}

function GreaseAmount({ entry, faults, change }: Omit<WayFieldsProps, 'way'>) {
  const { code } = useSite()
  const greases = useQuery(greasesQuery(code))
  return (
    <>
      <NativeSelect
        label="Grease"
        required
        data={[
          { value: '', label: 'Choose the grease' },
          ...(greases.data?.items ?? []).map(({ id, name }) => ({ value: id, label: name })),
        ]}
        value={entry.greaseId}
        error={faults['greaseId']}
        onChange={(event) => change({ greaseId: event.currentTarget.value })}
      />
      <NumberField
        label="The lubricator holds"
        unit="g"
        required
        text={entry.doseG}
        onText={(doseG) => change({ doseG })}
        error={faults['doseG']}
      />
    </>
  )
}
