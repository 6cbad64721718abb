import type { FlagFacts } from '@shaftbook/contract/flags'
import type { GreaseEntry } from '@shaftbook/contract/grease-plans'
import { proposalOf, type PlaceToday, type PlanProposal } from '@shaftbook/contract/plan-duty'
import { baseUrgency, type WantedFlag } from './flag-rules.ts'

/** A plan in force that may have to be looked at again, with the newest review of it. */
export interface PlanFacts {
  readonly planId: string
  readonly source: string
  readonly duty: Record<string, unknown>
  readonly entry: GreaseEntry | null
  readonly doseG: number | null
  readonly intervalHours: number | null
  readonly reviewOn: string | null
  readonly review: {
    readonly reviewOn: string | null
    readonly intervalHours: number | null
    readonly doseG: number | null
  } | null
}

/**
 * The plans to look at again: whose day of review has come, or which come to something else by the register of today, until
 * the engineer makes a new one or keeps it with a reason. What he kept is not asked again while it still comes to the same.
 */
export function planFlags(plans: readonly PlanFacts[], place: PlaceToday, today: string, now: Date): WantedFlag[] {
  return plans.flatMap((plan) => {
    const facts = { ...changedFacts(plan, place), ...dayFacts(plan, today) }
    if (Object.keys(facts).length === 0) return []
    const since = facts.reviewOn === undefined ? now.toISOString() : `${facts.reviewOn}T00:00:00Z`
    const told = { intervalHours: plan.intervalHours ?? undefined, doseG: plan.doseG ?? undefined, ...facts }
    return [{ kind: 'plan-review', subjectId: plan.planId, since, urgency: baseUrgency['plan-review'], facts: told }]
  })
}

function dayFacts({ reviewOn, review }: PlanFacts, today: string): FlagFacts {
  const day = review ? review.reviewOn : reviewOn
  return day !== null && day <= today ? { reviewOn: day } : {}
}

function changedFacts(plan: PlanFacts, place: PlaceToday): FlagFacts {
  const proposal = proposalFor(plan, place)
  if (!proposal || (!proposal.intervalDiffers && !proposal.doseDiffers)) return {}
  const { review } = plan
  if (review && review.intervalHours === proposal.intervalHours && review.doseG === proposal.doseG) return {}
  return {
    dutyChanged: true,
    ...(proposal.intervalDiffers &&
      proposal.intervalHours !== null && { proposedIntervalHours: proposal.intervalHours }),
    ...(proposal.doseDiffers && { proposedDoseG: proposal.doseG }),
  }
}

/** What a plan comes to by the register of today; null where it is not computed. */
export function proposalFor(plan: PlanFacts, place: PlaceToday): PlanProposal | null {
  const { entry, doseG, intervalHours } = plan
  if (entry === null || doseG === null || intervalHours === null) return null
  return proposalOf({ ...plan, entry, doseG, intervalHours }, place)
}
