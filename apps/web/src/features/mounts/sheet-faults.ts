import type { KitAnswer } from '@shaftbook/contract/judge-kit-check'
import { plantInstant } from '../../lib/plant-time.ts'
import type { PlaceLimits } from './band-of-place.ts'
import type { SheetJudgement } from './sheet-judgement.ts'
import { openBlanks, type Ask } from './sheet-asks.ts'
import { numberFault, numberFields, rowNumbers, typedFault, type NumberKey } from './sheet-numbers.ts'
import { isOpenQuestion } from './sheet-readings.ts'
import type { SheetScope } from './sheet-steps.ts'
import { seatPlaces, type Moment, type Sheet } from './sheet.ts'

/** Sentences by the key of the field they belong to. */
export type Faults = Readonly<Record<string, string>>

export interface Checked {
  sheet: Sheet
  asks: readonly Ask[]
  scope: SheetScope
  limits: PlaceLimits
  judged: SheetJudgement
  kitAnswers: ReadonlyMap<string, KitAnswer>
  hasMeter: boolean
  timeZone: string
  now: Date
}

/** What cannot be read as it is typed; shown at once, and in the way of keeping the sheet on the service. */
export function typingFaults({ sheet, judged }: Pick<Checked, 'sheet' | 'judged'>): Faults {
  const numbers = (Object.keys(numberFields) as NumberKey[]).map((key) => [key, numberFault(sheet, key)])
  const readings = judged.readings.map((reading) => [
    reading.key,
    reading.answer.kind === 'refused'
      ? reading.answer.sentence
      : isOpenQuestion(reading)
        ? 'Say what was meant with this reading.'
        : undefined,
  ])
  return kept({
    ...Object.fromEntries(numbers),
    ...Object.fromEntries(readings),
    ...seatFaults(sheet),
    ...startFaults(sheet),
  })
}

function seatFaults(sheet: Sheet) {
  return Object.fromEntries(
    (['shaft', 'housing'] as const).flatMap((seat) =>
      seatPlaces.map((place) => [`${seat}.${place}`, typedFault(sheet[seat][place], rowNumbers.diameterMm)]),
    ),
  )
}

function startFaults(sheet: Sheet) {
  return Object.fromEntries(
    sheet.startReadings.flatMap((typed, at) =>
      (['minutes', 'temperatureC', 'vibrationMmS'] as const).map((field) => [
        `startReadings.${at}.${field}`,
        typedFault(typed[field], rowNumbers[field]),
      ]),
    ),
  )
}

/** What has to be put right before the sheet can be kept as a draft. */
export function draftFaults(checked: Checked): Faults {
  const { sheet, timeZone, now } = checked
  const at = plantInstant(sheet.mountedAt, timeZone)
  return kept({
    ...typingFaults(checked),
    mountedAt:
      at === undefined
        ? 'Enter the day and the time.'
        : Date.parse(at) > now.getTime() + 60_000
          ? 'This lies in the future: check the day and the time.'
          : undefined,
    byFeelPerson:
      sheet.method === 'by-feel' && sheet.byFeelPerson.trim() === ''
        ? 'Name who felt it: a mount by feel stands on a person.'
        : undefined,
    reason: sheet.reason.trim().length < 3 ? 'Say in a few words why the bearing was fitted.' : undefined,
    fitter: sheet.fitter.trim() === '' ? 'Enter who fitted the bearing.' : undefined,
    noHoursReason: tooShort(sheet.noHoursReason) ? 'Give the reason in a few words.' : undefined,
    startLaterReason: tooShort(sheet.startLaterReason) ? 'Give the reason in a few words.' : undefined,
  })
}

/** What has to be put right before the sheet can be signed. */
export function signFaults(checked: Checked): Faults {
  const { sheet, scope, limits, judged } = checked
  return kept({
    ...(scope.removal && removalFaults(sheet)),
    ...(scope.purpose !== 'correction' && { ...hoursFaults(checked), ...openFaults(checked) }),
    ...(limits.judged &&
      scope.clearance &&
      sheet.method === 'feeler' && { ...rowFaults(checked, 'bench'), ...rowFaults(checked, 'mounted') }),
    driveUpMm:
      sheet.method === 'drive-up' && sheet.driveUpMm.trim() === '' && sheet.nutAngleDeg.trim() === ''
        ? 'The mount was done by travel: enter it, or the angle of the nut.'
        : undefined,
    outOfBandReason:
      judged.needsReason && sheet.outOfBandReason.trim() === ''
        ? 'The mount is not proven inside its limits: say why it stays as it is, or put it right before you sign.'
        : undefined,
    ...(scope.purpose === 'correction' && {
      correctionReason: sheet.correctionReason.trim().length < 3 ? 'Say what was wrong and how you know.' : undefined,
    }),
    ...draftFaults(checked),
  })
}

/** What is left open that a signed sheet does not leave open: a reason stands where a number or a check is missing. */
function openFaults({ sheet, scope, asks, kitAnswers }: Checked) {
  const blanks = openBlanks(asks, sheet).map(({ key }) => [`blanks.${key}`, 'Enter it, or say why it stays blank.'])
  const parts = [...kitAnswers].map(([id, answer]) => [
    `kitCheck.${id}`,
    answer.verdict === 'refused' || (answer.verdict === 'asked' && sheet.kitCheck[id]?.reason.trim() === '')
      ? answer.sentence
      : undefined,
  ])
  const started = asks.find(({ step }) => step === 'start')?.told(sheet) !== 'nothing'
  return {
    ...Object.fromEntries(blanks),
    ...(scope.kit && Object.fromEntries(parts)),
    startLaterReason: started ? undefined : 'Enter a reading of the first run, or say why it comes later.',
  }
}

function removalFaults(sheet: Sheet) {
  return {
    endKind: sheet.endKind === '' ? 'Say how the old bearing ended.' : undefined,
    observer: sheet.observer.trim() === '' ? 'Enter who looked at the old bearing.' : undefined,
  }
}

function hoursFaults({ sheet, hasMeter }: Checked) {
  const missing = hasMeter && sheet.meterShowsHours.trim() === '' && sheet.noHoursReason.trim() === ''
  return { meterShowsHours: missing ? 'Read the hour meter, or give the reason why not.' : undefined }
}

function rowFaults({ judged }: Checked, moment: Moment) {
  const missing = (['A', 'B'] as const).filter(
    (row) => !judged.readings.some((reading) => reading.moment === moment && reading.row === row),
  )
  return Object.fromEntries(
    missing.map((row) => [`${moment}.0.${row}`, `Row ${row} is not read: one row alone proves nothing.`]),
  )
}

function tooShort(text: string): boolean {
  return text.trim() !== '' && text.trim().length < 3
}

function kept(faults: Record<string, string | undefined>): Faults {
  return Object.fromEntries(Object.entries(faults).filter((entry): entry is [string, string] => entry[1] !== undefined))
}
