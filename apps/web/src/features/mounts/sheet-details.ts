import type { MountDetails } from '@shaftbook/contract/mount-details'
import type { Kit } from '@shaftbook/contract/kits'
import type { z } from 'zod'
import { plantClock, plantInstant } from '../../lib/plant-time.ts'
import { kitCheckLines } from './kit-check.ts'
import type { Ask } from './sheet-asks.ts'
import { numberOf, rowNumbers, typedNumber } from './sheet-numbers.ts'
import { seatReadings, seatTexts } from './sheet-seat.ts'
import { emptyKitLine, type Sheet } from './sheet.ts'

type DetailsInput = z.input<typeof MountDetails>

/** What a sheet tells beside the record's own columns, as it is sent. */
export function detailsOf(sheet: Sheet, asks: readonly Ask[], kit: Kit | null, timeZone: string): DetailsInput {
  return {
    blanks: blanksOf(sheet, asks),
    cautionsSeenBy: orNull(sheet.cautionsSeenBy),
    asFound: {
      ringCount: sheet.foundRingCount === '' ? null : Number(sheet.foundRingCount),
      nutSide: sheet.foundNutSide.trim(),
      seals: sheet.foundSeals.trim(),
      grease: sheet.foundGrease.trim(),
      note: sheet.foundNote.trim(),
    },
    seat: {
      shaft: seatReadings(sheet.shaft),
      shaftSystem: orNull(sheet.shaftSystem),
      shaftSurface: orNull(sheet.shaftSurface),
      shaftDecision: orNull(sheet.shaftDecision),
      housing: seatReadings(sheet.housing),
      housingSeatWidthMm: numberOf(sheet, 'housingSeatWidthMm'),
      softFootMm: numberOf(sheet, 'softFootMm'),
      housingDecision: orNull(sheet.housingDecision),
      note: sheet.seatNote.trim(),
    },
    kitCheck: kitCheckLines(sheet, kit),
    driveSteps: sheet.driveSteps.map((step, at) => ({
      number: at + 1,
      driveUpMm: typedNumber(step.driveUpMm, rowNumbers.driveUpMm),
      nutAngleDeg: typedNumber(step.nutAngleDeg, rowNumbers.nutAngleDeg),
      struck: step.struck,
    })),
    ...closingOf(sheet, timeZone),
  }
}

/** Reasons of what is still blank: one that was given before the number came counts no more. */
function blanksOf(sheet: Sheet, asks: readonly Ask[]): Sheet['blanks'] {
  const blank = asks.filter(({ key, told }) => sheet.blanks[key] !== undefined && told(sheet) !== 'all')
  return Object.fromEntries(blank.flatMap(({ key }) => (sheet.blanks[key] ? [[key, sheet.blanks[key]]] : [])))
}

function closingOf(sheet: Sheet, timeZone: string): DetailsInput {
  return {
    locking: {
      forwardDeg: numberOf(sheet, 'lockForwardDeg'),
      lockedWith: orNull(sheet.lockedWith),
      note: sheet.lockNote.trim(),
    },
    rings: {
      placed: orNull(sheet.ringsPlaced),
      seals: sheet.sealsFitted.trim(),
      sealsTurn: yesNo(sheet.sealsTurn),
    },
    capBolts: {
      size: orNull(sheet.boltSize),
      propertyClass: orNull(sheet.boltClass),
      friction: orNull(sheet.boltFriction),
      targetNm: numberOf(sheet, 'boltTargetNm'),
      stepsDone: sheet.boltStepsDone,
      marksMatch: yesNo(sheet.marksMatch),
    },
    startUp: {
      startedAt: plantInstant(sheet.startedAt, timeZone) ?? null,
      readings: sheet.startReadings.flatMap((typed) => {
        const minutes = typedNumber(typed.minutes, rowNumbers.minutes)
        const temperatureC = typedNumber(typed.temperatureC, rowNumbers.temperatureC)
        const vibrationMmS = typedNumber(typed.vibrationMmS, rowNumbers.vibrationMmS)
        return minutes === null ? [] : [{ minutes, temperatureC, vibrationMmS }]
      }),
      twinTemperatureC: numberOf(sheet, 'twinTemperatureC'),
      zone: orNull(sheet.zone),
      lockChecked: yesNo(sheet.lockChecked),
      notDoneReason: orNull(sheet.startLaterReason),
      note: sheet.startNote.trim(),
    },
  }
}

/** The fields of a sheet that a record tells in its details. */
export function sheetOfDetails(details: MountDetails, timeZone: string): Partial<Sheet> {
  const { asFound, seat, locking, rings, capBolts, startUp } = details
  return {
    blanks: details.blanks,
    cautionsSeenBy: details.cautionsSeenBy ?? '',
    ...(asFound && {
      foundRingCount: text(asFound.ringCount) as Sheet['foundRingCount'],
      foundNutSide: asFound.nutSide,
      foundSeals: asFound.seals,
      foundGrease: asFound.grease,
      foundNote: asFound.note,
    }),
    ...(seat && {
      shaft: seatTexts(seat.shaft),
      shaftSystem: seat.shaftSystem ?? '',
      shaftSurface: seat.shaftSurface ?? '',
      shaftDecision: seat.shaftDecision ?? '',
      housing: seatTexts(seat.housing),
      housingSeatWidthMm: text(seat.housingSeatWidthMm),
      softFootMm: text(seat.softFootMm),
      housingDecision: seat.housingDecision ?? '',
      seatNote: seat.note,
    }),
    kitCheck: Object.fromEntries(
      details.kitCheck.flatMap(({ kitLineId, found, foundCode, reason }) =>
        kitLineId === null ? [] : [[kitLineId, { ...emptyKitLine(), found, foundCode, reason }]],
      ),
    ),
    ...(locking && {
      lockForwardDeg: text(locking.forwardDeg),
      lockedWith: locking.lockedWith ?? '',
      lockNote: locking.note,
    }),
    ...(rings && {
      ringsPlaced: rings.placed ?? '',
      sealsFitted: rings.seals,
      sealsTurn: yesNoText(rings.sealsTurn),
    }),
    ...(capBolts && {
      boltSize: capBolts.size ?? '',
      boltClass: capBolts.propertyClass ?? '',
      boltFriction: capBolts.friction ?? '',
      boltTargetNm: text(capBolts.targetNm),
      boltStepsDone: capBolts.stepsDone,
      marksMatch: yesNoText(capBolts.marksMatch),
    }),
    ...(startUp && startUpPart(startUp, timeZone)),
  }
}

function startUpPart(startUp: NonNullable<MountDetails['startUp']>, timeZone: string): Partial<Sheet> {
  return {
    startedAt: startUp.startedAt === null ? '' : plantClock(new Date(startUp.startedAt), timeZone),
    startReadings: startUp.readings.map((each) => ({
      minutes: text(each.minutes),
      temperatureC: text(each.temperatureC),
      vibrationMmS: text(each.vibrationMmS),
    })),
    twinTemperatureC: text(startUp.twinTemperatureC),
    zone: startUp.zone ?? '',
    lockChecked: yesNoText(startUp.lockChecked),
    startLaterReason: startUp.notDoneReason ?? '',
    startNote: startUp.note,
  }
}

/** What was typed, without spaces round it; null where nothing was. */
export function orNull<Text extends string>(typed: Text | ''): Text | null {
  const trimmed = typed.trim()
  return trimmed === '' ? null : (trimmed as Text)
}

/** A recorded value as it would be typed. */
export function text(value: number | string | null): string {
  return value === null ? '' : String(value)
}

export function yesNo(answer: '' | 'yes' | 'no'): boolean | null {
  return answer === '' ? null : answer === 'yes'
}

export function yesNoText(answer: boolean | null): '' | 'yes' | 'no' {
  if (answer === null) return ''
  return answer ? 'yes' : 'no'
}
