import type { z } from 'zod'
import type { Judgement } from '@shaftbook/contract/judgement'
import type { MountDetails } from '@shaftbook/contract/mount-details'
import type { ClearanceClass } from '@shaftbook/contract/register-tables'
import { v7 as newId } from 'uuid'
import type { Overrides, SiteOwned } from './site-rows.ts'

export interface BearingRow extends SiteOwned {
  bearingTypeId: string
  serial: string | null
  lot: string | null
  maker: string | null
  packedOn: string | null
  createdAt: Date
}
export function aBearing(over: Overrides<BearingRow> & { bearingTypeId: string }): BearingRow {
  const plain = { serial: null, lot: null, maker: 'Tarnbeck', packedOn: null, createdAt: new Date() }
  return { ...plain, ...over, id: over.id ?? newId() }
}

export interface FitmentRow extends SiteOwned {
  positionId: string
  bearingId: string
  fittedAt: Date
  removedAt: Date | null
  startRunHours: number | null
  endRunHours: number | null
  runHours: number | null
  hoursSource: 'meter' | 'estimate' | 'none'
  entryAgeHours: number
  createdAt: Date
}
/** A bearing in its position since now. The records that count are named afterwards, by `nameRecords`. */
export function aFitment(over: Overrides<FitmentRow> & { positionId: string; bearingId: string }): FitmentRow {
  const fittedAt = over.fittedAt ?? new Date()
  return {
    removedAt: null,
    startRunHours: null,
    endRunHours: null,
    runHours: null,
    hoursSource: 'none',
    entryAgeHours: 0,
    createdAt: fittedAt,
    ...over,
    id: over.id ?? newId(),
    fittedAt,
  }
}

/** What is written down at a mount. A record is inserted unsigned, since a signed one takes no readings. */
export interface MountRecordRow extends SiteOwned, MountJudgementColumns {
  positionId: string
  bearingId: string
  mountedAt: Date
  runHours: number | null
  noHoursReason: string | null
  fitter: string
  checker: string | null
  permitReference: string | null
  reason: string
  method: 'feeler' | 'drive-up' | 'by-feel'
  byFeelPerson: string | null
  sleeveCode: string | null
  nutCode: string | null
  lockingCode: string | null
  ringCount: number | null
  ringWidthMm: number | null
  shaftDiameterMm: number | null
  temperatureC: number | null
  gauge: string | null
  zeroPointMethod: string | null
  driveUpMm: number | null
  nutAngleDeg: number | null
  greaseId: string | null
  greaseBearingG: number | null
  greaseHousingG: number | null
  capBoltTorqueNm: number | null
  turnsFree: boolean | null
  note: string
  outOfBandReason: string | null
  details: Partial<MountDetails>
  correctsId: string | null
  correctionReason: string | null
  createdBy: string
  createdAt: Date
}

/** The judgement of a mount as the table keeps it; all null in a draft. */
export interface MountJudgementColumns {
  clearanceClass: z.infer<typeof ClearanceClass> | null
  benchMeanNm: number | null
  mountedMeanNm: number | null
  reductionNm: number | null
  bandMinNm: number | null
  bandMaxNm: number | null
  residualMinNm: number | null
  expandedUncertaintyNm: number | null
  verdict: Judgement['verdict']
  residual: Judgement['residual']
  judgement: Judgement | null
  formulaVersion: string | null
}
export const notJudged: Readonly<MountJudgementColumns> = Object.freeze({
  clearanceClass: null,
  benchMeanNm: null,
  mountedMeanNm: null,
  reductionNm: null,
  bandMinNm: null,
  bandMaxNm: null,
  residualMinNm: null,
  expandedUncertaintyNm: null,
  verdict: null,
  residual: null,
  judgement: null,
  formulaVersion: null,
})

const emptySheet = {
  noHoursReason: null,
  checker: null,
  permitReference: null,
  byFeelPerson: null,
  sleeveCode: null,
  nutCode: null,
  lockingCode: null,
  ringCount: null,
  ringWidthMm: null,
  shaftDiameterMm: null,
  temperatureC: null,
  gauge: null,
  zeroPointMethod: null,
  driveUpMm: null,
  nutAngleDeg: null,
  greaseId: null,
  greaseBearingG: null,
  greaseHousingG: null,
  capBoltTorqueNm: null,
  turnsFree: null,
  outOfBandReason: null,
}

/** A draft of now, not judged yet, with nothing on the sheet but who fitted and why. */
export function aMountRecord(
  over: Overrides<MountRecordRow> & { positionId: string; bearingId: string; createdBy: string },
): MountRecordRow {
  const mountedAt = over.mountedAt ?? new Date()
  return {
    ...emptySheet,
    ...notJudged,
    runHours: null,
    fitter: 'A fitter',
    reason: 'Planned change',
    method: 'feeler',
    note: '',
    details: {},
    correctsId: null,
    correctionReason: null,
    createdAt: mountedAt,
    ...over,
    id: over.id ?? newId(),
    mountedAt,
  }
}

export interface MountReadingRow extends SiteOwned {
  mountRecordId: string
  moment: 'found' | 'bench' | 'step' | 'mounted'
  stepNumber: number | null
  struck: boolean
  bearingRow: 'A' | 'B'
  readingNumber: number
  clearanceNm: number
  typedValue: string
  typedUnit: 'mm' | 'um' | 'in' | 'thou'
}
export function aMountReading(over: Overrides<MountReadingRow> & { mountRecordId: string }): MountReadingRow {
  const clearanceNm = over.clearanceNm ?? 100_000
  const typed = { typedValue: (clearanceNm / 1e6).toString(), typedUnit: 'mm' as const }
  const place = { moment: 'bench' as const, stepNumber: null, bearingRow: 'A' as const, readingNumber: 1 }
  return { ...place, struck: false, ...typed, ...over, id: over.id ?? newId(), clearanceNm }
}

export interface RemovalRow extends SiteOwned {
  fitmentId: string
  positionId: string
  removedAt: Date
  runHours: number | null
  noHoursReason: string | null
  endKind: 'failed' | 'not-failed' | 'lost'
  modeClause: string | null
  cause: string | null
  detection: string | null
  evidence: string
  observer: string
  signedAt: Date
  signedBy: string
  correctsId: string | null
  correctionReason: string | null
  createdAt: Date
}
/** A signed removal of now, not failed. */
export function aRemoval(
  over: Overrides<RemovalRow> & { fitmentId: string; positionId: string; signedBy: string },
): RemovalRow {
  const removedAt = over.removedAt ?? new Date()
  return {
    runHours: null,
    noHoursReason: null,
    endKind: 'not-failed',
    modeClause: null,
    cause: null,
    detection: null,
    evidence: '',
    observer: 'A fitter',
    signedAt: removedAt,
    correctsId: null,
    correctionReason: null,
    createdAt: removedAt,
    ...over,
    id: over.id ?? newId(),
    removedAt,
  }
}
