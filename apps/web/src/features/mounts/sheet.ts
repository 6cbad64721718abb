import type { PositionOverview } from '@shaftbook/contract/position-views'
import type { EndKind } from '@shaftbook/contract/removals'
import type { MountRecord } from '@shaftbook/contract/mounts'
import { v7 as newId } from 'uuid'
import { plantClock } from '../../lib/plant-time.ts'
import type { LengthUnit } from '../../lib/length-units.ts'

/** A reading as typed; `meant` says that an unlikely one is right. */
export interface TypedReading {
  text: string
  meant: boolean
}
export type ReadingPair = Record<'A' | 'B', TypedReading>
export type Moment = 'bench' | 'mounted'
export type Method = MountRecord['method']

/** A mount sheet as a person fills it in: everything as typed. Names of fields are the contract's, where it has them. */
export interface Sheet {
  /** Made once, so that sending again is the same request. */
  recordId: string
  bearingId: string
  mountedAt: string
  meterShowsHours: string
  noHoursReason: string
  reason: string
  permitReference: string
  endKind: EndKind | ''
  modeClause: string | null
  cause: string
  detection: string
  evidence: string
  observer: string
  shaftDiameterMm: string
  bearingTypeId: string
  serial: string
  lot: string
  maker: string
  packedOn: string
  unit: LengthUnit
  bench: ReadingPair[]
  mounted: ReadingPair[]
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
  ringCount: '' | '0' | '1' | '2'
  ringWidthMm: string
  capBoltTorqueNm: string
  greaseId: string
  greaseBearingG: string
  greaseHousingG: string
  turnsFree: '' | 'yes' | 'no'
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

/** Two places a row to begin with. */
const emptyPairs = () => [emptyPair(), emptyPair()]

interface Start {
  place: PositionOverview
  personName: string
  unit: LengthUnit
  timeZone: string
  now: Date
}

/** A new sheet: nothing is filled in that has to be looked at. */
export function newSheet({ place, personName, unit, timeZone, now }: Start): Sheet {
  return {
    recordId: newId(),
    bearingId: newId(),
    mountedAt: plantClock(now, timeZone),
    meterShowsHours: '',
    noHoursReason: '',
    reason: '',
    permitReference: '',
    endKind: '',
    modeClause: null,
    cause: '',
    detection: '',
    evidence: '',
    observer: personName,
    shaftDiameterMm: '',
    bearingTypeId: place.bearingType.id,
    serial: '',
    lot: '',
    maker: '',
    packedOn: '',
    unit,
    bench: emptyPairs(),
    mounted: emptyPairs(),
    gauge: '',
    temperatureC: '',
    method: place.bearingType.kind === 'self-aligning-ball' ? 'by-feel' : 'feeler',
    byFeelPerson: '',
    zeroPointMethod: '',
    driveUpMm: '',
    nutAngleDeg: '',
    sleeveCode: '',
    nutCode: '',
    lockingCode: '',
    ringCount: '',
    ringWidthMm: '',
    capBoltTorqueNm: '',
    greaseId: place.plan?.greaseId ?? '',
    greaseBearingG: '',
    greaseHousingG: '',
    turnsFree: '',
    fitter: personName,
    checker: '',
    note: '',
    outOfBandReason: '',
    correctionReason: '',
  }
}

/**
 * A sheet with what a record says, to go on with a draft or to correct a signed one. A signed one keeps the machine's
 * hours, not what the meter showed: its correction begins with none, which leaves them as they are.
 */
export function sheetOfRecord(record: MountRecord, start: Start): Sheet {
  const blank = newSheet(start)
  const text = (value: number | string | null): string => (value === null ? '' : String(value))
  const { runHours, noHoursReason } = record.signedAt === null ? record : { runHours: null, noHoursReason: null }
  return {
    ...blank,
    bearingId: record.bearing.id,
    mountedAt: plantClock(new Date(record.mountedAt), start.timeZone),
    meterShowsHours: text(runHours),
    noHoursReason: text(noHoursReason),
    reason: record.reason,
    permitReference: text(record.permitReference),
    ...removalPart(record.removal),
    shaftDiameterMm: text(record.shaftDiameterMm),
    bearingTypeId: record.bearing.bearingTypeId,
    serial: text(record.bearing.serial),
    lot: text(record.bearing.lot),
    maker: text(record.bearing.maker),
    packedOn: text(record.bearing.packedOn),
    unit: record.readings[0]?.typedUnit ?? blank.unit,
    bench: pairsOf(record, 'bench'),
    mounted: pairsOf(record, 'mounted'),
    gauge: text(record.gauge),
    temperatureC: text(record.temperatureC),
    method: record.method,
    byFeelPerson: text(record.byFeelPerson),
    zeroPointMethod: text(record.zeroPointMethod),
    driveUpMm: text(record.driveUpMm),
    nutAngleDeg: text(record.nutAngleDeg),
    sleeveCode: text(record.sleeveCode),
    nutCode: text(record.nutCode),
    lockingCode: text(record.lockingCode),
    ringCount: text(record.ringCount) as Sheet['ringCount'],
    ringWidthMm: text(record.ringWidthMm),
    capBoltTorqueNm: text(record.capBoltTorqueNm),
    greaseId: text(record.greaseId),
    greaseBearingG: text(record.greaseBearingG),
    greaseHousingG: text(record.greaseHousingG),
    turnsFree: record.turnsFree === null ? '' : record.turnsFree ? 'yes' : 'no',
    fitter: record.fitter,
    checker: text(record.checker),
    note: record.note,
    outOfBandReason: text(record.outOfBandReason),
  }
}

function removalPart(removal: MountRecord['removal']): Partial<Sheet> {
  if (!removal) return {}
  const { endKind, modeClause, cause, detection, evidence, observer } = removal
  return { endKind: endKind ?? '', modeClause, cause: cause ?? '', detection: detection ?? '', evidence, observer }
}

function pairsOf(record: MountRecord, moment: Moment): ReadingPair[] {
  const inRow = (row: 'A' | 'B'): TypedReading[] =>
    record.readings
      .filter((reading) => reading.moment === moment && reading.row === row)
      .map(({ typedValue }) => ({ text: typedValue, meant: true }))
  const [a, b] = [inRow('A'), inRow('B')]
  const pairs = Array.from({ length: Math.max(a.length, b.length, 2) }, (_, at) => ({
    A: a[at] ?? emptyPair().A,
    B: b[at] ?? emptyPair().B,
  }))
  return pairs
}
