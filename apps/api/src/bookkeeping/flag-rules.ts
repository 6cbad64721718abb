import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import { takesGrease, type DueState } from '@shaftbook/contract/greasing'
import type { FlagFacts, FlagKind } from '@shaftbook/contract/flags'
import type { ResidualVerdict, Verdict } from '@shaftbook/contract/judgement'

/** A flag that has to be up. */
export interface WantedFlag {
  readonly kind: FlagKind
  /** What it hangs on: a bearing's stay, a grease plan or a shaft; another stay raises another flag. */
  readonly subjectId: string
  readonly since: string
  readonly urgency: number
  readonly facts: FlagFacts
}

export interface FitmentFacts {
  readonly fitmentId: string
  readonly fittedAt: string
  readonly designation: string
  readonly mount: MountFacts | null
}

export interface MountFacts {
  readonly mountRecordId: string
  readonly mountedAt: string
  readonly verdict: Verdict | null
  readonly residual: ResidualVerdict | null
  readonly reductionUm: number | null
  readonly mountedMeanUm: number | null
  readonly bandMinUm: number | null
  readonly bandMaxUm: number | null
  readonly bandSource: string | null
  readonly residualMinUm: number | null
  readonly expandedUncertaintyUm: number | null
  /** Why the engineer wants it mounted again, where he decided so last. */
  readonly doAgainReason: string | null
}

export interface DueFacts {
  readonly planId: string
  readonly task: GreaseTask
  readonly state: DueState
  readonly dueOn: string
  readonly overdueOn: string
  readonly dueBy: 'hours' | 'calendar' | 'never-greased'
  readonly dueRunHours: number | null
  readonly estimated: boolean
  readonly intervalHours: number | null
  readonly doseG: number | null
  readonly greaseName: string | null
}

/** How pressing each kind is before how far out it is counts: what breaks a bearing soonest comes first. */
export const baseUrgency: Readonly<Record<FlagKind, number>> = {
  'residual-too-small': 900,
  'mount-over': 800,
  'mount-under': 700,
  'several-locating': 650,
  'no-locating': 640,
  'never-greased': 560,
  'greasing-overdue': 500,
  'running-hot': 620,
  'vibration-rise': 610,
  'task-overdue': 450,
  'grease-change-open': 420,
  'plan-review': 200,
  'mount-not-proven': 400,
  'residual-not-proven': 390,
  'no-mount-record': 300,
}

/** The flags of a position: of the bearing that is in, and of all that is to be done there. */
export function positionFlags(fitment: FitmentFacts | null, dues: readonly DueFacts[]): WantedFlag[] {
  return [...(fitment ? fitmentFlags(fitment) : []), ...dues.flatMap(greasingFlags)]
}

function fitmentFlags(fitment: FitmentFacts): WantedFlag[] {
  const { mount } = fitment
  const flag = (kind: FlagKind, since: string, out: number, facts: FlagFacts): WantedFlag => ({
    kind,
    subjectId: fitment.fitmentId,
    since,
    urgency: baseUrgency[kind] + Math.min(90, Math.max(0, out)),
    facts: { designation: fitment.designation, ...facts },
  })
  if (!mount) return [flag('no-mount-record', fitment.fittedAt, 0, {})]
  const facts = mountFacts(mount)
  const flags: WantedFlag[] = []
  if (mount.verdict === 'over') flags.push(flag('mount-over', mount.mountedAt, percentOut(mount), facts))
  if (mount.verdict === 'under') flags.push(flag('mount-under', mount.mountedAt, percentOut(mount), facts))
  if (mount.verdict === 'not-proven') flags.push(flag('mount-not-proven', mount.mountedAt, 0, facts))
  if (mount.residual === 'not-proven') flags.push(flag('residual-not-proven', mount.mountedAt, 0, facts))
  if (mount.residual === 'too-small') flags.push(flag('residual-too-small', mount.mountedAt, 0, facts))
  return flags
}

function mountFacts(mount: MountFacts): FlagFacts {
  return {
    mountRecordId: mount.mountRecordId,
    reductionUm: mount.reductionUm ?? undefined,
    mountedMeanUm: mount.mountedMeanUm ?? undefined,
    bandMinUm: mount.bandMinUm ?? undefined,
    bandMaxUm: mount.bandMaxUm ?? undefined,
    bandSource: mount.bandSource ?? undefined,
    residualMinUm: mount.residualMinUm ?? undefined,
    expandedUncertaintyUm: mount.expandedUncertaintyUm ?? undefined,
    doAgainReason: mount.doAgainReason ?? undefined,
  }
}

/** How far the reduction lies outside, in per cent of the band's width. */
function percentOut({ reductionUm, bandMinUm, bandMaxUm }: MountFacts): number {
  if (reductionUm === null || bandMinUm === null || bandMaxUm === null) return 0
  const outUm = Math.max(reductionUm - bandMaxUm, bandMinUm - reductionUm, 0)
  return (outUm / (bandMaxUm - bandMinUm)) * 100
}

function greasingFlags(due: DueFacts): WantedFlag[] {
  const facts: FlagFacts = {
    task: due.task,
    dueOn: due.dueOn,
    dueBy: due.dueBy,
    dueRunHours: due.dueRunHours,
    estimated: due.estimated,
    intervalHours: due.intervalHours ?? undefined,
    doseG: due.doseG ?? undefined,
    greaseName: due.greaseName ?? undefined,
  }
  const overdue = takesGrease(due.task) ? 'greasing-overdue' : 'task-overdue'
  const flag = (kind: FlagKind, since: string, more: number): WantedFlag => ({
    kind,
    subjectId: due.planId,
    since: `${since}T00:00:00Z`,
    urgency: baseUrgency[kind] + more + seniority(since),
    facts,
  })
  if (due.state === 'never-greased') return [flag('never-greased', due.dueOn, 0)]
  if (due.state === 'overdue') return [flag(overdue, due.overdueOn, 0)]
  if (due.state === 'missed') return [flag(overdue, due.overdueOn, missedMore)]
  return []
}

/** A missed interval is more pressing than any that is merely overdue. */
const missedMore = 50

/** The earlier the day, the more; a number that stands still, so that the list's order needs no nightly work. */
function seniority(day: string): number {
  const dayNumber = Date.parse(day) / 86_400_000
  return (40_000 - dayNumber) / 1000
}
