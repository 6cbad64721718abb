import type { MountDecision } from '@shaftbook/contract/mount-decisions'
import { v7 as newId } from 'uuid'
import type { Overrides, SiteOwned } from './site-rows.ts'

export interface GaugeRow extends SiteOwned {
  name: string
  kind: 'feeler-metric' | 'feeler-inch' | 'other'
  bladesNm: number[]
  checkedUntil: string | null
  note: string
}
/** A set of metric blades, 0.03 to 0.05 mm. */
export function aGauge(over: Overrides<GaugeRow>): GaugeRow {
  const id = over.id ?? newId()
  const bladesNm = [30_000, 40_000, 50_000]
  return { name: `Set ${id.slice(-8)}`, kind: 'feeler-metric', bladesNm, checkedUntil: null, note: '', ...over, id }
}

export interface MountPlanRow extends SiteOwned {
  positionId: string
  plannedFor: string
  reason: string
  bearingTypeId: string | null
  who: string
  note: string
  plannedBy: string
  createdAt: Date
}
/** An open plan for the type of its position. */
export function aMountPlan(
  over: Overrides<MountPlanRow> & { positionId: string; plannedFor: string; plannedBy: string },
): MountPlanRow {
  const plain = { reason: 'Planned change', bearingTypeId: null, who: '', note: '', createdAt: new Date() }
  return { ...plain, ...over, id: over.id ?? newId() }
}

export interface MountDecisionRow extends SiteOwned {
  mountRecordId: string
  kind: MountDecision['kind']
  until: string | null
  reason: string
  decidedAt: Date
  decidedBy: string
}
/** A mount that is to be done again. */
export function aMountDecision(
  over: Overrides<MountDecisionRow> & { mountRecordId: string; decidedBy: string },
): MountDecisionRow {
  const plain = { kind: 'do-again' as const, until: null, reason: 'It will run hot', decidedAt: new Date() }
  return { ...plain, ...over, id: over.id ?? newId() }
}
