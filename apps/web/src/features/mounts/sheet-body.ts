import type { MountCorrection, MountDraftChange, NewMountRecord } from '@shaftbook/contract/mounts'
import type { FieldFault } from '@shaftbook/contract/problem'
import type { z } from 'zod'
import { plantInstant } from '../../lib/plant-time.ts'
import type { SheetScope } from './sheet-context.ts'
import type { Faults, Suggestions } from './sheet-faults.ts'
import { numberOf } from './sheet-numbers.ts'
import type { ReadReading } from './sheet-readings.ts'
import type { Sheet } from './sheet.ts'

/** Everything that a body is made from; the sheet has no faults by now. */
export interface BodyInput {
  sheet: Sheet
  scope: SheetScope
  readings: readonly ReadReading[]
  needsReason: boolean
  hasMeter: boolean
  timeZone: string
}

export function newMountBody(input: BodyInput, positionId: string, sign: boolean): z.input<typeof NewMountRecord> {
  return {
    id: input.sheet.recordId,
    positionId,
    ...draftBody(input),
    sign,
  }
}

export function draftBody(input: BodyInput): z.input<typeof MountDraftChange> {
  const { sheet } = input
  return {
    bearing: {
      id: sheet.bearingId,
      bearingTypeId: sheet.bearingTypeId,
      serial: orNull(sheet.serial),
      lot: orNull(sheet.lot),
      maker: orNull(sheet.maker),
      packedOn: orNull(sheet.packedOn),
    },
    ...sheetFields(input),
    ...hours(input),
    removal: removalOf(input),
  }
}

export function correctionBody(input: BodyInput): z.input<typeof MountCorrection> {
  const { sheet, hasMeter } = input
  return {
    id: sheet.recordId,
    correctionReason: sheet.correctionReason.trim(),
    ...sheetFields(input),
    ...(hasMeter && hours(input)),
  }
}

/** What is told so far of how the old bearing ended; null where nothing comes out. */
function removalOf({ sheet, scope }: BodyInput): z.input<typeof NewMountRecord>['removal'] {
  if (!scope.removal) return null
  return {
    endKind: sheet.endKind === '' ? null : sheet.endKind,
    modeClause: sheet.endKind === 'failed' ? sheet.modeClause : null,
    cause: orNull(sheet.cause),
    detection: orNull(sheet.detection),
    evidence: sheet.evidence.trim(),
    observer: sheet.observer.trim(),
  }
}

function hours({ sheet, hasMeter }: BodyInput) {
  if (!hasMeter) return { meterShowsHours: null, noHoursReason: 'The machine has no hour meter' }
  const meterShowsHours = numberOf(sheet, 'meterShowsHours')
  return { meterShowsHours, noHoursReason: meterShowsHours === null ? orNull(sheet.noHoursReason) : null }
}

function sheetFields({ sheet, scope, readings, needsReason, timeZone }: BodyInput) {
  const { taper, sleeve, nut, rings } = scope
  const when = <T>(asked: boolean, value: T): T | null => (asked ? value : null)
  return {
    mountedAt: plantInstant(sheet.mountedAt, timeZone) ?? '',
    fitter: sheet.fitter.trim(),
    checker: orNull(sheet.checker),
    permitReference: orNull(sheet.permitReference),
    reason: sheet.reason.trim(),
    method: sheet.method,
    byFeelPerson: when(sheet.method === 'by-feel', orNull(sheet.byFeelPerson)),
    sleeveCode: when(sleeve, orNull(sheet.sleeveCode)),
    nutCode: when(nut, orNull(sheet.nutCode)),
    lockingCode: when(nut, orNull(sheet.lockingCode)),
    ringCount: when(rings && sheet.ringCount !== '', Number(sheet.ringCount)),
    ringWidthMm: when(rings && Number(sheet.ringCount) > 0, numberOf(sheet, 'ringWidthMm')),
    shaftDiameterMm: numberOf(sheet, 'shaftDiameterMm'),
    temperatureC: numberOf(sheet, 'temperatureC'),
    gauge: orNull(sheet.gauge),
    zeroPointMethod: when(taper, orNull(sheet.zeroPointMethod)),
    driveUpMm: when(taper, numberOf(sheet, 'driveUpMm')),
    nutAngleDeg: when(taper, numberOf(sheet, 'nutAngleDeg')),
    greaseId: orNull(sheet.greaseId),
    greaseBearingG: numberOf(sheet, 'greaseBearingG'),
    greaseHousingG: numberOf(sheet, 'greaseHousingG'),
    capBoltTorqueNm: numberOf(sheet, 'capBoltTorqueNm'),
    turnsFree: sheet.turnsFree === '' ? null : sheet.turnsFree === 'yes',
    note: sheet.note.trim(),
    outOfBandReason: when(needsReason, orNull(sheet.outOfBandReason)),
    readings: readings.map(({ moment, row, text, meant }) => ({
      moment,
      row,
      typedValue: text,
      typedUnit: sheet.unit,
      confirmed: meant,
    })),
  }
}

function orNull(text: string): string | null {
  return text.trim() === '' ? null : text.trim()
}

/** The service's faults by the sheet's own field keys: `readings.3.typedValue` is where that reading stands. */
export function faultsByField(faults: readonly FieldFault[], readings: readonly ReadReading[]): Faults {
  return Object.fromEntries(faults.map(({ path, message }) => [fieldKey(path, readings), message]))
}

/** What the service says may have been meant, by the sheet's own field keys. */
export function suggestionsByField(faults: readonly FieldFault[], readings: readonly ReadReading[]): Suggestions {
  return Object.fromEntries(
    faults.flatMap(({ path, suggestions }) => (suggestions ? [[fieldKey(path, readings), suggestions]] : [])),
  )
}

function fieldKey(path: string, readings: readonly ReadReading[]): string {
  const at = /^readings\.(\d+)/.exec(path)?.[1]
  if (at !== undefined) return readings[Number(at)]?.key ?? 'bench.0.A'
  if (path === 'readings') return 'bench.0.A'
  if (path === 'bearing.id') return 'serial'
  return path.replace(/^(bearing|removal)\./, '')
}
