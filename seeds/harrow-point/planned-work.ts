import { addDays } from '@shaftbook/bearing/plain-date'
import type { PositionRow } from '../builders/position-rows.ts'
import type { MountRecordRow } from '../builders/record-rows.ts'
import {
  aGauge,
  aMountDecision,
  aMountPlan,
  type GaugeRow,
  type MountDecisionRow,
  type MountPlanRow,
} from '../builders/sheet-rows.ts'
import type { Random } from '../random.ts'
import { registerDays, type Calendar } from './calendar.ts'

interface Gauge {
  name: string
  firstUm: number
  checkedInDays: number
}
interface PlannedMount {
  tag: string
  inDays: number
  reason: string
  who: string
  note: string
}
interface Decision {
  tag: string
  kind: 'accept-until' | 'do-again'
  daysAgo: number
  /** null: done again. */
  untilInDays: number | null
  reason: string
}

/** What the engineer of a terminal keeps beside the register. */
export interface PlannedWork {
  gauges: readonly Gauge[]
  plans: readonly PlannedMount[]
  decisions: readonly Decision[]
}

/** Blades, mounts planned for the next days, and decisions on mounts that stand open. */
export const harrowPointWork: PlannedWork = {
  gauges: [
    { name: 'Feeler set 1, 0.03 to 0.30 mm', firstUm: 30, checkedInDays: 140 },
    { name: 'Feeler set 2, 0.02 to 0.30 mm', firstUm: 20, checkedInDays: 260 },
  ],
  plans: [
    {
      tag: 'RP02-HD-A',
      inDays: 1,
      reason: 'Driven too far three days ago: a new bearing goes on',
      who: 'Mara Voss',
      note: 'The belt is free until the evening shift',
    },
    { tag: 'GA05-HD-B', inDays: 4, reason: 'Left too tight in the autumn', who: 'Jonas Pell', note: '' },
    { tag: 'BG01-TL-A', inDays: 11, reason: 'Nobody knows how it was mounted', who: '', note: 'Take the seat’s size' },
  ],
  decisions: [
    { tag: 'RP02-HD-A', kind: 'do-again', daysAgo: 2, untilInDays: null, reason: 'It will run hot at full load' },
    {
      tag: 'SL04-HD-B',
      kind: 'accept-until',
      daysAgo: 20,
      untilInDays: 24,
      reason: 'The shuttle belt is wanted for two ships; mended at the stop after them',
    },
    {
      tag: 'AS06-SC-B',
      kind: 'accept-until',
      daysAgo: 60,
      untilInDays: -4,
      reason: 'Turns slowly and stays cool: looked at again after the harvest',
    },
  ],
}

export const noPlannedWork: PlannedWork = { gauges: [], plans: [], decisions: [] }

interface Writing {
  siteId: string
  random: Random
  calendar: Calendar
  engineerId: string
  positions: readonly PositionRow[]
  /** The record that counts of the bearing that is in, by position. */
  mounts: ReadonlyMap<string, MountRecordRow>
}

/** The planned work of a terminal as rows. */
export function writePlannedWork(work: PlannedWork, writing: Writing) {
  const positionOf = (tag: string): PositionRow => {
    const found = writing.positions.find((position) => position.tag === tag)
    if (!found) throw new Error(`There is no position ${tag}.`)
    return found
  }
  return {
    gauge: work.gauges.map((gauge) => gaugeRow(writing, gauge)),
    mount_plan: work.plans.map((plan) => planRow(writing, positionOf(plan.tag), plan)),
    mount_decision: work.decisions.map((decision) => decisionRow(writing, positionOf(decision.tag), decision)),
  }
}

const bladesUm = [20, 30, 40, 50, 60, 70, 80, 90, 100, 150, 200, 250, 300]

function gaugeRow({ siteId, random, calendar }: Writing, { name, firstUm, checkedInDays }: Gauge): GaugeRow {
  const bladesNm = bladesUm.filter((um) => um >= firstUm).map((um) => um * 1000)
  const checkedUntil = addDays(calendar.today, checkedInDays)
  return aGauge({ siteId, id: random.uuidAt(calendar.at(0, 0)), name, bladesNm, checkedUntil })
}

function planRow(writing: Writing, position: PositionRow, { inDays, reason, who, note }: PlannedMount): MountPlanRow {
  const { siteId, random, calendar, engineerId: plannedBy } = writing
  const createdAt = calendar.at(registerDays - 2, 13 * 60)
  const plannedFor = addDays(calendar.today, inDays)
  const id = random.uuidAt(createdAt)
  return aMountPlan({ siteId, id, positionId: position.id, plannedFor, reason, who, note, plannedBy, createdAt })
}

function decisionRow(writing: Writing, position: PositionRow, decision: Decision): MountDecisionRow {
  const { siteId, random, calendar, engineerId: decidedBy, mounts } = writing
  const record = mounts.get(position.id)
  if (!record) throw new Error(`${position.tag} has no mount record to decide on.`)
  const decidedAt = calendar.at(registerDays - decision.daysAgo, 9 * 60)
  const until = decision.untilInDays === null ? null : addDays(calendar.today, decision.untilInDays)
  const { kind, reason } = decision
  return aMountDecision({
    siteId,
    id: random.uuidAt(decidedAt),
    mountRecordId: record.id,
    kind,
    until,
    reason,
    decidedAt,
    decidedBy,
  })
}
