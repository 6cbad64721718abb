import type { MountRecord } from '@shaftbook/contract/mounts'
import { plantClock } from '../../lib/plant-time.ts'
import { sheetOfDetails, text, yesNoText } from './sheet-details.ts'
import { newSheet, type SheetStart } from './sheet-new.ts'
import { emptyPair, type Moment, type ReadingPair, type Sheet, type TypedReading, type TypedStep } from './sheet.ts'

/**
 * A sheet with what a record says, to go on with a draft or to correct a signed one. A signed one keeps the machine's
 * hours, not what the meter showed: its correction begins with none, which leaves them as they are.
 */
export function sheetOfRecord(record: MountRecord, start: SheetStart): Sheet {
  const blank = newSheet(start)
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
    bearingTypeId: record.bearing.bearingTypeId,
    serial: text(record.bearing.serial),
    lot: text(record.bearing.lot),
    maker: text(record.bearing.maker),
    packedOn: text(record.bearing.packedOn),
    unit: record.readings[0]?.typedUnit ?? blank.unit,
    found: pairsOf(record, 'found', 1),
    bench: pairsOf(record, 'bench', 2),
    mounted: pairsOf(record, 'mounted', 2),
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
    turnsFree: yesNoText(record.turnsFree),
    fitter: record.fitter,
    checker: text(record.checker),
    note: record.note,
    outOfBandReason: text(record.outOfBandReason),
    planId: record.planId,
    ...sheetOfDetails(record.details, start.timeZone),
    driveSteps: stepsOf(record),
  }
}

function removalPart(removal: MountRecord['removal']): Partial<Sheet> {
  if (!removal) return {}
  const { endKind, modeClause, cause, detection, evidence, observer } = removal
  return { endKind: endKind ?? '', modeClause, cause: cause ?? '', detection: detection ?? '', evidence, observer }
}

function pairsOf(record: MountRecord, moment: Moment, atLeast: number): ReadingPair[] {
  const inRow = (row: 'A' | 'B'): TypedReading[] =>
    record.readings
      .filter((reading) => reading.moment === moment && reading.row === row)
      .map(({ typedValue }) => ({ text: typedValue, meant: true }))
  const [a, b] = [inRow('A'), inRow('B')]
  return Array.from({ length: Math.max(a.length, b.length, atLeast) }, (_, at) => ({
    A: a[at] ?? emptyPair().A,
    B: b[at] ?? emptyPair().B,
  }))
}

/** The steps of the drive-up: what the details say of each, with the readings that were taken there. */
function stepsOf(record: MountRecord): TypedStep[] {
  return record.details.driveSteps.map(({ number, driveUpMm, nutAngleDeg, struck }) => {
    const inRow = (row: 'A' | 'B'): TypedReading => {
      const read = record.readings.find(
        ({ moment, step, row: of }) => moment === 'step' && step === number && of === row,
      )
      return { text: read?.typedValue ?? '', meant: read !== undefined }
    }
    return {
      pair: { A: inRow('A'), B: inRow('B') },
      driveUpMm: text(driveUpMm),
      nutAngleDeg: text(nutAngleDeg),
      struck,
    }
  })
}
