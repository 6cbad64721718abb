import { Button } from '@mantine/core'
import { createGreasePlan, type GunPlan } from '@shaftbook/contract/grease-plans'
import { dutyOf, dutyToday, proposalOf, type PlanProposal } from '@shaftbook/contract/plan-duty'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { formatCount } from '../../lib/format-count.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { dutyChanges } from './duty-changes.ts'
import { KeepPlan } from './keep-plan.tsx'
import { todayOf } from './plan-entry.ts'
import classes from './greasing-dialog.module.css'

/** What a plan comes to by the register of today, beside what it says: it is taken or kept, never changed by itself. */
export function PlanProposalPart({ plan, place }: { plan: GunPlan; place: PositionOverview }) {
  const { may } = useSite()
  const [keeping, setKeeping] = useState(false)
  const before = dutyOf(plan)
  const proposal = proposalOf(plan, todayOf(place))
  if (!before || !proposal) return null
  const changes = dutyChanges(before, dutyToday(before, todayOf(place)))
  return (
    <section className={classes.proposal} aria-label="The duty has changed">
      <h4 className={classes.heading}>The duty has changed since this plan was made</h4>
      <ul>
        {changes.map(({ what, before: then, today }) => (
          <li key={what}>
            {what}: {then}, today {today}
          </li>
        ))}
      </ul>
      <div className={classes.compare}>
        <Numbers label="The plan says" hours={plan.intervalHours} doseG={plan.doseG} />
        <Numbers label="By the register of today" hours={proposal.intervalHours} doseG={proposedDose(plan, proposal)} />
      </div>
      {keeping && <KeepPlan plan={plan} onDone={() => setKeeping(false)} />}
      {!keeping && may(createGreasePlan) && (
        <div className={classes.row}>
          {proposal.intervalHours !== null && <Take plan={plan} place={place} hours={proposal.intervalHours} />}
          <Button variant="default" onClick={() => setKeeping(true)}>
            Keep the plan as it is
          </Button>
        </div>
      )}
    </section>
  )
}

/** A dose that was rounded to whole strokes stays where the bearing is the same. */
function proposedDose(plan: GunPlan, proposal: PlanProposal): number {
  return proposal.doseDiffers ? proposal.doseG : plan.doseG
}

function Numbers({ label, hours, doseG }: { label: string; hours: number | null; doseG: number }) {
  return (
    <div>
      <p className={classes.soft}>{label}</p>
      <p className={classes.big}>{hours === null ? 'no interval' : `${formatCount(hours)} run hours`}</p>
      <p className={classes.soft}>{hours === null ? 'outside the formula: set it by hand' : `${doseG} g`}</p>
    </div>
  )
}

function Take({ plan, place, hours }: { plan: GunPlan; place: PositionOverview; hours: number }) {
  const { code } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const [id] = useState(() => newId())
  const take = useMutation({
    mutationFn: () => {
      const { positionId, greaseId, entry, calendarMonths } = plan
      const before = dutyOf(plan)
      const proposal = proposalOf(plan, todayOf(place))
      if (!before || !proposal) throw new Error('This plan was set by hand: enter a new one.')
      const doseG = proposedDose(plan, proposal)
      const amounts = { greaseId, entry, calendarMonths, doseG, intervalHours: hours }
      const duty = { ...dutyToday(before, todayOf(place)) }
      const body = { id, positionId, ...amounts, source: 'computed', reason: 'The duty has changed', duty } as const
      return call(createGreasePlan, { params: { site: code }, body })
    },
    onSuccess: async () => {
      await invalidateSite(client, code)
      notice.done(`${plan.tag} is regreased every ${formatCount(hours)} run hours from now on.`)
    },
  })
  return (
    <>
      <Button onClick={() => take.mutate()} loading={take.isPending}>
        Take {formatCount(hours)} run hours
      </Button>
      {take.isError && (
        <p className={classes.failed} role="alert">
          {take.error.message}
        </p>
      )}
    </>
  )
}
