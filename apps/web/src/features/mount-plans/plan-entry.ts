import type { MountPlan } from '@shaftbook/contract/mount-plans'

/** A plan as it is typed; an empty bearing means the type of the position. */
export interface TypedPlan {
  readonly plannedFor: string
  readonly reason: string
  readonly bearingTypeId: string
  readonly who: string
  readonly note: string
}

export function typedPlan(plan: MountPlan | undefined): TypedPlan {
  return {
    plannedFor: plan?.plannedFor ?? '',
    reason: plan?.reason ?? '',
    bearingTypeId: plan?.bearingTypeId ?? '',
    who: plan?.who ?? '',
    note: plan?.note ?? '',
  }
}

/** What is wrong with a typed plan, by field; a day that has passed since may stay, but not be chosen. */
export function planFaults(typed: TypedPlan, plan: MountPlan | undefined, today: string): ReadonlyMap<string, string> {
  const faults = new Map<string, string>()
  if (typed.plannedFor === '') faults.set('plannedFor', 'Choose a day')
  else if (typed.plannedFor < today && typed.plannedFor !== plan?.plannedFor)
    faults.set('plannedFor', 'Choose today or a later day')
  if (typed.reason.trim().length < 3) faults.set('reason', 'Give the reason in a few words')
  return faults
}

type PlanBody = Pick<MountPlan, 'plannedFor' | 'reason' | 'bearingTypeId' | 'who' | 'note'>

/** What is sent of a typed plan: all of a new one, of a changed one only what differs. */
export function changesOf(typed: TypedPlan, plan: MountPlan): Partial<PlanBody>
export function changesOf(typed: TypedPlan, plan: undefined): PlanBody
export function changesOf(typed: TypedPlan, plan: MountPlan | undefined): Partial<PlanBody> {
  const body: PlanBody = {
    plannedFor: typed.plannedFor,
    reason: typed.reason.trim(),
    bearingTypeId: typed.bearingTypeId === '' ? null : typed.bearingTypeId,
    who: typed.who.trim(),
    note: typed.note.trim(),
  }
  if (!plan) return body
  const names = (Object.keys(body) as (keyof PlanBody)[]).filter((name) => body[name] !== plan[name])
  return Object.fromEntries(names.map((name) => [name, body[name]]))
}

/** Open plans by their day, the nearest first. */
export function byDay(plans: readonly MountPlan[]): { day: string; plans: MountPlan[] }[] {
  const days = Map.groupBy(plans, ({ plannedFor }) => plannedFor)
  return [...days].map(([day, ofDay]) => ({ day, plans: ofDay })).toSorted((a, b) => (a.day < b.day ? -1 : 1))
}

/** How a day lies to the plant's today, in words; empty for a day further on. */
export function dayWords(day: string, today: string): string {
  if (day === today) return 'today'
  return day < today ? 'passed' : ''
}
