import type { BlankReason, KitCheckLine, MountDetails, SeatDecision } from '@shaftbook/contract/mount-details'
import type { MountRecord } from '@shaftbook/contract/mounts'
import type { EndKind } from '@shaftbook/contract/removals'
import type { LengthUnit } from '../../lib/length-units.ts'

/** A reading as typed; `meant` says that an unlikely one is right. */
export interface TypedReading {
  text: string
  meant: boolean
}
export type ReadingPair = Record<'A' | 'B', TypedReading>
/** When a clearance is read: before the old bearing leaves, on the bench, at its end place on the shaft. */
export type Moment = 'found' | 'bench' | 'mounted'
export type Method = MountRecord['method']

/** Places of a seat in the order in which they are measured: three planes by two directions. */
export const seatPlaces = ['1x', '1y', '2x', '2y', '3x', '3y'] as const
export type SeatPlace = (typeof seatPlaces)[number]
/** Diameters of a seat in mm as typed. */
export type SeatTexts = Record<SeatPlace, string>

/** One step of the drive-up as typed: its clearances, and how far the bearing had come. */
export interface TypedStep {
  pair: ReadingPair
  driveUpMm: string
  nutAngleDeg: string
  /** Mistyped: it stays to be read and counts no more. */
  struck: boolean
}

/** What lay on the bench for one line of the kit. */
export interface TypedKitLine {
  found: KitCheckLine['found'] | ''
  foundCode: string
  reason: string
}

export interface TypedStartReading {
  minutes: string
  temperatureC: string
  vibrationMmS: string
}

type YesNo = '' | 'yes' | 'no'
type StartUp = NonNullable<MountDetails['startUp']>
type Seat = NonNullable<MountDetails['seat']>
type Locking = NonNullable<MountDetails['locking']>
type Rings = NonNullable<MountDetails['rings']>
type Bolts = NonNullable<MountDetails['capBolts']>

/** A mount sheet as a person fills it in: everything as typed. Names of fields are the contract's, where it has them. */
export interface Sheet {
  /** Made once, so that sending again is the same request. */
  recordId: string
  bearingId: string
  /** The plan that the sheet is made for, if one is. */
  planId: string | null
  /** The stay that the sheet ends: the bearing that was fitted when it was begun. */
  leavingFitmentId: string | null
  mountedAt: string
  meterShowsHours: string
  noHoursReason: string
  reason: string
  permitReference: string
  cautionsSeenBy: string
  endKind: EndKind | ''
  modeClause: string | null
  cause: string
  detection: string
  evidence: string
  observer: string
  foundRingCount: '' | '0' | '1' | '2'
  foundNutSide: string
  foundSeals: string
  foundGrease: string
  foundNote: string
  shaft: SeatTexts
  shaftSystem: NonNullable<Seat['shaftSystem']> | ''
  shaftSurface: NonNullable<Seat['shaftSurface']> | ''
  shaftDecision: SeatDecision | ''
  housing: SeatTexts
  housingSeatWidthMm: string
  softFootMm: string
  housingDecision: SeatDecision | ''
  seatNote: string
  kitCheck: Record<string, TypedKitLine>
  bearingTypeId: string
  serial: string
  lot: string
  maker: string
  packedOn: string
  unit: LengthUnit
  found: ReadingPair[]
  bench: ReadingPair[]
  mounted: ReadingPair[]
  driveSteps: TypedStep[]
  gauge: string
  temperatureC: string
  method: Method
  byFeelPerson: string
  zeroPointMethod: string
  driveUpMm: string
  nutAngleDeg: string
  sleeveCode: string
  nutCode: string
  lockingCode: string
  lockForwardDeg: string
  lockedWith: NonNullable<Locking['lockedWith']> | ''
  lockNote: string
  ringCount: '' | '0' | '1' | '2'
  ringWidthMm: string
  ringsPlaced: NonNullable<Rings['placed']> | ''
  sealsFitted: string
  sealsTurn: YesNo
  boltSize: string
  boltClass: string
  boltFriction: NonNullable<Bolts['friction']> | ''
  boltTargetNm: string
  boltStepsDone: number[]
  marksMatch: YesNo
  capBoltTorqueNm: string
  greaseId: string
  greaseBearingG: string
  greaseHousingG: string
  turnsFree: YesNo
  startedAt: string
  startReadings: TypedStartReading[]
  twinTemperatureC: string
  zone: NonNullable<StartUp['zone']> | ''
  lockChecked: YesNo
  startLaterReason: string
  startNote: string
  /** Why a number that the sheet asks stays blank, by the key of its field. */
  blanks: Record<string, BlankReason>
  fitter: string
  checker: string
  note: string
  outOfBandReason: string
  correctionReason: string
}

/** The fields that hold one line of text. */
export type TextField = {
  [Key in keyof Sheet]: Sheet[Key] extends string ? (string extends Sheet[Key] ? Key : never) : never
}[keyof Sheet]

export function emptyPair(): ReadingPair {
  return { A: { text: '', meant: false }, B: { text: '', meant: false } }
}

export function emptySeat(): SeatTexts {
  return { '1x': '', '1y': '', '2x': '', '2y': '', '3x': '', '3y': '' }
}

export function emptyKitLine(): TypedKitLine {
  return { found: '', foundCode: '', reason: '' }
}

export function emptyStartReading(): TypedStartReading {
  return { minutes: '', temperatureC: '', vibrationMmS: '' }
}
