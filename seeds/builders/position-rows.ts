import type { GreaseTask, GreaseWay } from '@shaftbook/contract/grease-plans'
import { v7 as newId } from 'uuid'
import type { Overrides, SiteOwned } from './site-rows.ts'

export interface PositionRow extends SiteOwned {
  shaftId: string
  tag: string
  name: string
  locating: boolean
  seat: 'adapter-sleeve' | 'withdrawal-sleeve' | 'tapered-journal' | 'cylindrical'
  shaftSystem: 'metric' | 'inch'
  shaftDiameterMm: number | null
  housingCode: string | null
  housingSeatWidthMm: number | null
  bearingTypeId: string
  kitId: string | null
  makerChartId: string | null
  ownReductionMinNm: number | null
  ownReductionMaxNm: number | null
  ownResidualMinNm: number | null
  ownBandSource: string | null
  retiredAt: Date | null
}
/** A position on an adapter sleeve in a housing SN520, judged by the generic guide, without a kit. */
export function aPosition(over: Overrides<PositionRow> & { shaftId: string; bearingTypeId: string }): PositionRow {
  const id = over.id ?? newId()
  return {
    tag: `P-${id.slice(-8)}`,
    name: 'Drive side',
    locating: true,
    seat: 'adapter-sleeve',
    shaftSystem: 'metric',
    shaftDiameterMm: 90,
    housingCode: 'SN520',
    housingSeatWidthMm: 70.3,
    kitId: null,
    makerChartId: null,
    ownReductionMinNm: null,
    ownReductionMaxNm: null,
    ownResidualMinNm: null,
    ownBandSource: null,
    retiredAt: null,
    ...over,
    id,
  }
}

export interface GreasePlanRow extends SiteOwned {
  positionId: string
  way: GreaseWay | null
  task: GreaseTask | null
  greaseId: string | null
  oil: string
  entry: 'side' | 'outer-ring-groove' | null
  doseG: number | null
  intervalHours: number | null
  calendarMonths: number | null
  calendarDays: number | null
  reviewOn: string | null
  source: 'computed' | 'by-hand'
  reason: string
  duty: Record<string, unknown>
  endedAt: Date | null
  createdAt: Date
}
/** What a plan of regreasing by gun says at least. */
export type GunPlanRow = GreasePlanRow & {
  task: 'regrease'
  greaseId: string
  doseG: number
  intervalHours: number
  calendarMonths: number
}
export function aGreasePlan(
  over: Partial<Omit<GunPlanRow, 'task' | 'siteId' | 'positionId' | 'greaseId'>> &
    Pick<GunPlanRow, 'siteId' | 'positionId' | 'greaseId'>,
): GunPlanRow {
  return {
    way: 'gun',
    task: 'regrease',
    oil: '',
    calendarDays: null,
    reviewOn: null,
    entry: 'side',
    doseG: 42,
    intervalHours: 2000,
    calendarMonths: 12,
    source: 'by-hand',
    reason: 'Set by the engineer',
    duty: {},
    endedAt: null,
    createdAt: new Date(),
    ...over,
    id: over.id ?? newId(),
  }
}

export interface GreasingRow extends SiteOwned {
  positionId: string
  planId: string | null
  task: GreaseTask
  kind: 'regreasing' | 'initial-fill' | null
  greasedAt: Date
  runHours: number | null
  hoursSource: 'meter' | 'estimate' | 'none'
  greaseId: string | null
  doseG: number | null
  plannedDoseG: number | null
  note: string
  signedAt: Date
  signedBy: string
  correctsId: string | null
  correctionReason: string | null
  withdrawn: boolean
  createdAt: Date
}
/** A signed regreasing of now. */
export function aGreasing(
  over: Overrides<GreasingRow> & { positionId: string; greaseId: string | null; signedBy: string },
): GreasingRow {
  const greasedAt = over.greasedAt ?? new Date()
  return {
    planId: null,
    task: 'regrease',
    kind: 'regreasing',
    runHours: null,
    hoursSource: 'none',
    doseG: 42,
    plannedDoseG: null,
    note: '',
    signedAt: greasedAt,
    correctsId: null,
    correctionReason: null,
    withdrawn: false,
    createdAt: greasedAt,
    ...over,
    id: over.id ?? newId(),
    greasedAt,
  }
}
