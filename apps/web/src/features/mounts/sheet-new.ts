import type { MountPlan } from '@shaftbook/contract/mount-plans'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { v7 as newId } from 'uuid'
import { plantClock } from '../../lib/plant-time.ts'
import type { LengthUnit } from '../../lib/length-units.ts'
import { emptyPair, emptySeat, type Sheet } from './sheet.ts'

export interface SheetStart {
  place: PositionOverview
  plan?: MountPlan | null
  personName: string
  unit: LengthUnit
  timeZone: string
  now: Date
}

/** Two places a row to begin with. */
const emptyPairs = () => [emptyPair(), emptyPair()]

/** A new sheet: nothing is filled in that has to be looked at. */
export function newSheet({ place, plan = null, personName, unit, timeZone, now }: SheetStart): Sheet {
  return {
    ...untold(),
    recordId: newId(),
    bearingId: newId(),
    planId: plan?.id ?? null,
    leavingFitmentId: place.fitment?.id ?? null,
    mountedAt: plantClock(now, timeZone),
    reason: plan?.reason ?? '',
    observer: personName,
    bearingTypeId: plan?.bearingTypeId ?? place.bearingType.id,
    unit,
    method: place.bearingType.kind === 'self-aligning-ball' ? 'by-feel' : 'feeler',
    greaseId: place.plan?.greaseId ?? '',
    fitter: personName,
  }
}

/** Everything that only the person at the shaft can tell. */
type Known =
  | 'recordId'
  | 'bearingId'
  | 'planId'
  | 'leavingFitmentId'
  | 'mountedAt'
  | 'bearingTypeId'
  | 'unit'
  | 'method'
  | 'greaseId'
  | 'fitter'

function untold(): Omit<Sheet, Known> {
  return {
    meterShowsHours: '',
    noHoursReason: '',
    reason: '',
    permitReference: '',
    cautionsSeenBy: '',
    endKind: '',
    modeClause: null,
    cause: '',
    detection: '',
    evidence: '',
    observer: '',
    foundRingCount: '',
    foundNutSide: '',
    foundSeals: '',
    foundGrease: '',
    foundNote: '',
    shaft: emptySeat(),
    shaftSystem: '',
    shaftSurface: '',
    shaftDecision: '',
    housing: emptySeat(),
    housingSeatWidthMm: '',
    softFootMm: '',
    housingDecision: '',
    seatNote: '',
    kitCheck: {},
    serial: '',
    lot: '',
    maker: '',
    packedOn: '',
    found: [emptyPair()],
    bench: emptyPairs(),
    mounted: emptyPairs(),
    driveSteps: [],
    gauge: '',
    temperatureC: '',
    byFeelPerson: '',
    zeroPointMethod: '',
    driveUpMm: '',
    nutAngleDeg: '',
    sleeveCode: '',
    nutCode: '',
    lockingCode: '',
    lockForwardDeg: '',
    lockedWith: '',
    lockNote: '',
    ringCount: '',
    ringWidthMm: '',
    ringsPlaced: '',
    sealsFitted: '',
    sealsTurn: '',
    boltSize: '',
    boltClass: '',
    boltFriction: '',
    boltTargetNm: '',
    boltStepsDone: [],
    marksMatch: '',
    capBoltTorqueNm: '',
    greaseBearingG: '',
    greaseHousingG: '',
    turnsFree: '',
    startedAt: '',
    startReadings: [],
    twinTemperatureC: '',
    zone: '',
    lockChecked: '',
    startLaterReason: '',
    startNote: '',
    blanks: {},
    checker: '',
    note: '',
    outOfBandReason: '',
    correctionReason: '',
  }
}
