import { nutAngleDeg } from '@shaftbook/bearing/drive-up'
import { toNanometres } from '@shaftbook/bearing/units'
import { firstFillG, housingOf, sleeveOf } from '../builders/position-kit.ts'
import { aMountReading, aMountRecord, type MountReadingRow, type MountRecordRow } from '../builders/record-rows.ts'
import type { Random } from '../random.ts'
import { feelMount, type Intent } from './feeler.ts'
import { bandsOf, judgeByFeel, judgementColumns, type Charts, type Measured } from './judgement.ts'
import type { Crew } from './people.ts'
import type { Place } from './plant.ts'

export interface Fitting {
  place: Place
  bearingId: string
  crew: Crew
  intent: Intent
  mountedAt: Date
  runHours: number | null
  noHoursReason: string | null
  reason: string
  /** False where nobody wrote the first fill down. */
  fillRecorded: boolean
  signedBy: string
  charts: Charts
}

export interface WrittenMount {
  record: MountRecordRow
  readings: MountReadingRow[]
  judged: boolean
}

/** A position is felt and judged where a spherical roller bearing goes up a sleeve; others are fitted without a band. */
export function isJudged(place: Place): boolean {
  return place.type.taper !== null && place.type.kind === 'spherical-roller'
}

/** The mount record of a fitting, with readings and judgement where there is a band to judge by. */
export function writeMount(random: Random, fitting: Fitting): WrittenMount {
  const { place, crew, mountedAt } = fitting
  const { position, type, plan } = place
  const fill = firstFillG(type)
  const record = aMountRecord({
    siteId: position.siteId,
    id: random.uuidAt(mountedAt),
    positionId: position.id,
    bearingId: fitting.bearingId,
    mountedAt,
    runHours: fitting.runHours,
    noHoursReason: fitting.noHoursReason,
    fitter: crew.fitter,
    checker: crew.checker,
    permitReference: `PTW-${random.integer(1000, 9999)}`,
    reason: fitting.reason,
    ...seatSheet(place),
    shaftDiameterMm: position.shaftDiameterMm === null ? null : position.shaftDiameterMm - random.integer(0, 6) / 100,
    temperatureC: random.integer(8, 26),
    ...(fitting.fillRecorded
      ? { greaseId: plan.greaseId, greaseBearingG: fill.bearingG, greaseHousingG: fill.housingG }
      : {}),
    turnsFree: true,
    createdBy: fitting.signedBy,
  })
  const bands = bandsOf(position, type, fitting.charts)
  if (!isJudged(place)) {
    const byFeel = { method: 'by-feel' as const, byFeelPerson: crew.fitter }
    const columns = judgementColumns(judgeByFeel(type, bands), type)
    return { record: { ...record, ...byFeel, ...columns }, readings: [], judged: false }
  }
  const { measured, judgement } = feelMount(random, bands, type, fitting.intent, crew.readingsPerRow)
  return {
    record: {
      ...record,
      ...driveSheet(place, crew, measured),
      ...notes(fitting),
      ...judgementColumns(judgement, type),
    },
    readings: writeReadings(random, record, crew, measured),
    judged: true,
  }
}

function seatSheet({ position, type }: Place): Partial<MountRecordRow> {
  const sleeve = sleeveOf(type)
  const housing = position.locating ? housingOf(position.housingCode, type) : null
  return {
    sleeveCode: sleeve?.sleeveCode ?? null,
    nutCode: sleeve?.nutCode ?? null,
    lockingCode: sleeve?.lockingCode ?? null,
    ringCount: housing?.ringsLocating ?? 0,
    ringWidthMm: housing?.ringWidthIfTwoMm ?? null,
  }
}

function driveSheet({ type }: Place, crew: Crew, { driveUpMm }: Measured): Partial<MountRecordRow> {
  const pitchMm = sleeveOf(type)?.pitchMm
  const nutAngle = pitchMm === undefined ? null : Math.round(nutAngleDeg(driveUpMm, pitchMm))
  const zeroPointMethod = 'Hand tight, then to the first resistance of the hook spanner'
  return { gauge: crew.gauge, driveUpMm, nutAngleDeg: nutAngle, zeroPointMethod }
}

const outOfBand: Partial<Record<Intent, string>> = {
  over: 'Drove one slot too far; no other bearing was in store',
  under: 'Stop was over before it could be driven further',
}

function notes({ intent }: Fitting): Pick<MountRecordRow, 'note' | 'outOfBandReason'> {
  const note =
    intent === 'not-proven' ? 'Judged by the rule that a reduction has to be proven, on trial for a month' : ''
  return { note, outOfBandReason: outOfBand[intent] ?? null }
}

function writeReadings(random: Random, record: MountRecordRow, crew: Crew, measured: Measured): MountReadingRow[] {
  const counts = new Map<string, number>()
  return measured.readings.map(({ moment, row, clearanceUm }) => {
    const readingNumber = (counts.get(moment + row) ?? 0) + 1
    counts.set(moment + row, readingNumber)
    const millimetres = (clearanceUm / 1000).toFixed(2).replace('.', crew.comma ? ',' : '.')
    return aMountReading({
      siteId: record.siteId,
      id: random.uuidAt(record.mountedAt),
      mountRecordId: record.id,
      moment,
      bearingRow: row,
      readingNumber,
      clearanceNm: toNanometres(clearanceUm, 'um'),
      typedValue: crew.unit === 'um' ? String(clearanceUm) : millimetres,
      typedUnit: crew.unit,
    })
  })
}
