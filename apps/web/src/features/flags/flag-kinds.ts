import { listGreasePlans } from '@shaftbook/contract/grease-plans'
import { createGreasing } from '@shaftbook/contract/greasing'
import { FlagKind } from '@shaftbook/contract/flags'
import { createMount, decideMount } from '@shaftbook/contract/mounts'
import { readPositionOverview } from '@shaftbook/contract/position-views'
import { positions } from '@shaftbook/contract/register-tables'
import type { Endpoint } from '@shaftbook/contract/endpoint'
import type { FlagUrgency } from '../../ui/flag-row.tsx'
import type { ResidualVerdict, Verdict } from '../../ui/verdict-mark.tsx'

export interface FlagKindWords {
  /** What is wrong, as the row's title. */
  readonly title: string
  /** The same after a count: "14 overdue". */
  readonly counted: string
  readonly group: FlagGroup
  readonly urgency: FlagUrgency
  readonly verdict?: Verdict | ResidualVerdict
  readonly act: FlagAct
}

export type FlagGroup = 'Mounts' | 'Shafts' | 'Greasing'
export type FlagAct =
  'log-greasing' | 'log-task' | 'see-plan' | 'see-position' | 'log-remount' | 'decide' | 'set-locating'

/** The words of each kind of flag, in the order of how pressing they are. */
export const flagKinds: Readonly<Record<FlagKind, FlagKindWords>> = {
  'residual-too-small': {
    title: 'Too little clearance left',
    counted: 'with too little clearance',
    group: 'Mounts',
    urgency: 'now',
    verdict: 'too-small',
    act: 'log-remount',
  },
  'mount-over': {
    title: 'Mount over its band',
    counted: 'over',
    group: 'Mounts',
    urgency: 'now',
    verdict: 'over',
    act: 'log-remount',
  },
  'mount-under': {
    title: 'Mount under its band',
    counted: 'under',
    group: 'Mounts',
    urgency: 'now',
    verdict: 'under',
    act: 'log-remount',
  },
  'several-locating': {
    title: 'More than one locating position',
    counted: 'with several locating positions',
    group: 'Shafts',
    urgency: 'now',
    act: 'set-locating',
  },
  'no-locating': {
    title: 'No locating position',
    counted: 'with no locating position',
    group: 'Shafts',
    urgency: 'now',
    act: 'set-locating',
  },
  'running-hot': {
    title: 'Running hot',
    counted: 'running hot',
    group: 'Greasing',
    urgency: 'now',
    act: 'see-position',
  },
  'vibration-rise': {
    title: 'Vibration has risen',
    counted: 'with more vibration',
    group: 'Greasing',
    urgency: 'now',
    act: 'see-position',
  },
  'never-greased': {
    title: 'Never greased',
    counted: 'never done',
    group: 'Greasing',
    urgency: 'now',
    act: 'log-greasing',
  },
  'greasing-overdue': {
    title: 'Regreasing overdue',
    counted: 'overdue',
    group: 'Greasing',
    urgency: 'now',
    act: 'log-greasing',
  },
  'task-overdue': {
    title: 'Check or turning overdue',
    counted: 'with a check or turning overdue',
    group: 'Greasing',
    urgency: 'soon',
    act: 'log-task',
  },
  'grease-change-open': {
    title: 'Grease change-over under way',
    counted: 'changing grease',
    group: 'Greasing',
    urgency: 'soon',
    act: 'see-plan',
  },
  'mount-not-proven': {
    title: 'Mount not proven',
    counted: 'not proven',
    group: 'Mounts',
    urgency: 'soon',
    verdict: 'not-proven',
    act: 'log-remount',
  },
  'residual-not-proven': {
    title: 'Clearance left not proven',
    counted: 'with clearance not proven',
    group: 'Mounts',
    urgency: 'soon',
    verdict: 'not-proven',
    act: 'log-remount',
  },
  'no-mount-record': {
    title: 'No mount record',
    counted: 'without a record',
    group: 'Mounts',
    urgency: 'watch',
    act: 'log-remount',
  },
  'plan-review': {
    title: 'Grease plan to be looked at again',
    counted: 'with a plan to look at again',
    group: 'Greasing',
    urgency: 'watch',
    act: 'see-plan',
  },
}

export const flagKindOrder = Object.keys(flagKinds) as FlagKind[]

/** What each act is called, and the endpoint that it ends at: who may call that may do it. */
export const flagActs: Readonly<Record<FlagAct, { label: string; endpoint: Endpoint }>> = {
  'log-greasing': { label: 'Log greasing', endpoint: createGreasing },
  'log-task': { label: 'Log it', endpoint: createGreasing },
  'see-position': { label: 'See the position', endpoint: readPositionOverview },
  'see-plan': { label: 'See the plan', endpoint: listGreasePlans },
  'log-remount': { label: 'Log remount', endpoint: createMount },
  decide: { label: 'Decide', endpoint: decideMount },
  'set-locating': { label: 'Set locating', endpoint: positions.change },
}
