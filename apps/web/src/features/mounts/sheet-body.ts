import type { MountSeen } from '@shaftbook/contract/mount-sheet'
import type { MountCorrection, MountDraftChange, NewMountRecord } from '@shaftbook/contract/mounts'
import type { z } from 'zod'
import type { Kit } from '@shaftbook/contract/kits'
import { plantInstant } from '../../lib/plant-time.ts'
import type { PlaceLimits } from './band-of-place.ts'
import type { Ask } from './sheet-asks.ts'
import { detailsOf, orNull } from './sheet-details.ts'
import { numberOf } from './sheet-numbers.ts'
import { fittedCode, type CodeKey } from './kit-check.ts'
import type { ReadReading } from './sheet-readings.ts'
import { seatReadings } from './sheet-seat.ts'
import type { SheetScope } from './sheet-steps.ts'
import type { Sheet } from './sheet.ts'

/** Everything that a body is made from; the sheet has no faults by now. */
export interface BodyInput {
  sheet: Sheet
  scope: SheetScope
  asks: readonly Ask[]
  readings: readonly ReadReading[]
  needsReason: boolean
  hasMeter: boolean
  limits: PlaceLimits
  kit: Kit | null
  /** The smallest diameter that the record had before, where it holds no single readings. */
  shaftDiameterMm: number | null
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
    leavingFitmentId: sheet.leavingFitmentId,
    seen: seenBy(input),
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

/** What the person at the shaft judged by, as this device showed it. */
function seenBy({ limits, kit }: BodyInput): z.input<typeof MountSeen> {
  return {
    bandMinUm: limits.band?.minUm ?? null,
    bandMaxUm: limits.band?.maxUm ?? null,
    residualMinUm: limits.residualMinimum?.minUm ?? null,
    kitVersion: kit?.version ?? null,
    kitId: kit?.id ?? null,
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

function sheetFields(input: BodyInput) {
  const { sheet, scope, readings, needsReason, timeZone } = input
  const { taper, sleeve, nut, rings } = scope
  const codeOf = (at: CodeKey): string | null => orNull(fittedCode(sheet, input.kit, at))
  const when = <T>(asked: boolean, value: T): T | null => (asked ? value : null)
  return {
    mountedAt: plantInstant(sheet.mountedAt, timeZone) ?? '',
    fitter: sheet.fitter.trim(),
    checker: orNull(sheet.checker),
    permitReference: orNull(sheet.permitReference),
    reason: sheet.reason.trim(),
    method: sheet.method,
    byFeelPerson: when(sheet.method === 'by-feel', orNull(sheet.byFeelPerson)),
    sleeveCode: when(sleeve, codeOf('sleeveCode')),
    nutCode: when(nut, codeOf('nutCode')),
    lockingCode: when(nut, codeOf('lockingCode')),
    ringCount: when(rings && sheet.ringCount !== '', Number(sheet.ringCount)),
    ringWidthMm: when(rings && Number(sheet.ringCount) > 0, numberOf(sheet, 'ringWidthMm')),
    shaftDiameterMm: smallestShaftMm(input),
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
    readings: readings.map(({ moment, step, row, text, meant, struck }) => ({
      moment,
      step,
      row,
      typedValue: text,
      typedUnit: sheet.unit,
      confirmed: meant,
      struck,
    })),
    planId: sheet.planId,
    details: detailsOf(sheet, input.asks, input.kit, timeZone),
  }
}

function smallestShaftMm({ sheet, shaftDiameterMm }: BodyInput): number | null {
  const read = seatReadings(sheet.shaft).map(({ diameterMm }) => diameterMm)
  return read.length > 0 ? Math.min(...read) : shaftDiameterMm
}
