import type { BlankReason, MountDetails, SeatReading } from '@shaftbook/contract/mount-details'
import type { MountRecord } from '@shaftbook/contract/mounts'
import { partTitle, space, table, type Block, type Column, type Fact } from './blocks.ts'
import { cellOf } from './mount-paper-parts.ts'
import { plainNumber, plantTime, withUnit } from './words.ts'

type Part<Key extends keyof MountDetails> = NonNullable<MountDetails[Key]>

/** What was seen before anything was cleaned. */
export function asFoundFacts(found: Part<'asFound'>): Fact[] {
  return [
    { label: 'Rings', value: withUnit(found.ringCount, 'found') },
    { label: 'Nut side', value: found.nutSide },
    { label: 'Seals', value: found.seals },
    { label: 'Grease', value: found.grease },
    { label: 'Note', value: found.note },
  ]
}

const decisions = {
  'use-again': 'used again',
  repaired: 'repaired',
  replaced: 'replaced',
  'engineer-asked': 'the engineer was asked',
} as const

/** Shaft and housing as measured, and what was decided of them. */
export function seatFacts(seat: Part<'seat'>): Fact[] {
  return [
    { label: 'Shaft, mm', value: diameters(seat.shaft) },
    { label: 'Shaft system', value: seat.shaftSystem },
    { label: 'Shaft surface', value: seat.shaftSurface },
    { label: 'Shaft', value: seat.shaftDecision && decisions[seat.shaftDecision] },
    { label: 'Housing, mm', value: diameters(seat.housing) },
    { label: 'Seat width', value: withUnit(seat.housingSeatWidthMm, 'mm') },
    { label: 'Soft foot', value: withUnit(seat.softFootMm, 'mm') },
    { label: 'Housing', value: seat.housingDecision && decisions[seat.housingDecision] },
    { label: 'Note', value: seat.note },
  ]
}

function diameters(readings: readonly SeatReading[]): string {
  return readings
    .map(({ plane, direction, diameterMm }) => `${plane}${direction} ${plainNumber(diameterMm)}`)
    .join(',  ')
}

const placed = { 'both-sides': 'one each side', 'nut-side': 'on the nut side', 'far-side': 'on the far side' } as const
const frictions = { dry: 'dry', 'light-oil': 'light oil', 'moly-paste': 'moly paste' } as const
const yesNo = (value: boolean | null, yes: string, no: string): string | null =>
  value === null ? null : value ? yes : no

/** Lock, rings, seals and cap. */
export function closingFacts({ locking, rings, capBolts }: MountDetails): Fact[] {
  const bolts = [capBolts?.size, capBolts?.propertyClass, capBolts?.friction && frictions[capBolts.friction]]
  return [
    { label: 'Locked with', value: locking?.lockedWith },
    { label: 'Nut forward', value: withUnit(locking?.forwardDeg ?? null, '° to the slot') },
    { label: 'Lock note', value: locking?.note },
    { label: 'Rings placed', value: rings?.placed && placed[rings.placed] },
    { label: 'Seals', value: rings?.seals },
    { label: 'Seals turn', value: yesNo(rings?.sealsTurn ?? null, 'with the shaft', 'not with the shaft') },
    { label: 'Cap bolts', value: bolts.filter(Boolean).join(', ') },
    { label: 'Torque wanted', value: withUnit(capBolts?.targetNm ?? null, 'N·m') },
    { label: 'Steps done', value: capBolts?.stepsDone.map((step) => `${step} %`).join(', ') },
    { label: 'Cap marks', value: yesNo(capBolts?.marksMatch ?? null, 'match', 'do not match') },
  ]
}

export function startUpFacts(startUp: Part<'startUp'>, timeZone: string): Fact[] {
  const readings = startUp.readings.map(({ minutes, temperatureC, vibrationMmS }) =>
    [
      `${plainNumber(minutes)} min`,
      temperatureC === null ? null : `${plainNumber(temperatureC)} °C`,
      vibrationMmS === null ? null : `${plainNumber(vibrationMmS)} mm/s`,
    ]
      .filter((part) => part !== null)
      .join(', '),
  )
  return [
    { label: 'Started', value: startUp.startedAt && plantTime(startUp.startedAt, timeZone) },
    { label: 'Read', value: readings.join('\n') },
    { label: 'Its twin', value: withUnit(startUp.twinTemperatureC, '°C') },
    { label: 'ISO 20816 zone', value: startUp.zone },
    { label: 'Lock and bolts', value: yesNo(startUp.lockChecked, 'looked at again', 'not looked at again') },
    { label: 'Not done because', value: startUp.notDoneReason },
    { label: 'Note', value: startUp.note },
  ]
}

const foundWords = {
  'as-planned': 'as planned',
  other: 'another one',
  missing: 'missing',
  'not-needed': 'not needed',
} as const

/** What lay on the bench against the kit. */
export function kitPart(column: Column, { kitCheck }: MountDetails): Block[] {
  if (kitCheck.length === 0) return []
  const columns = [
    { head: 'Part', share: 14 },
    { head: 'In the kit', share: 22 },
    { head: 'On the bench', share: 16 },
    { head: 'Code', share: 20 },
    { head: 'Quantity', share: 12 },
    { head: 'Reason', share: 34 },
  ]
  const rows = kitCheck.map((line) => [
    line.kind,
    line.plannedCode || '–',
    foundWords[line.found],
    line.foundCode || '–',
    `${plainNumber(line.quantity)} ${line.unit}`,
    line.reason,
  ])
  return [partTitle(column, 'Kit check'), ...table(column, columns, rows), space(8)]
}

/** The drive-up step by step: travel, nut angle and clearance of both rows; struck ones say so and count no more. */
export function drivePart(column: Column, { readings, details }: MountRecord): Block[] {
  const { driveSteps } = details
  const felt = readings.filter(({ moment }) => moment === 'step')
  const numbers = new Set([...driveSteps.map(({ number }) => number), ...felt.map(({ step }) => step ?? 0)])
  if (numbers.size === 0) return []
  const columns = [
    { head: 'Step', share: 18 },
    { head: 'Travel', share: 26 },
    { head: 'Nut', share: 20 },
    { head: 'Row A', share: 30, align: 'right' as const },
    { head: 'Row B', share: 30, align: 'right' as const },
  ]
  const rows = [...numbers]
    .sort((a, b) => a - b)
    .map((number) => {
      const step = driveSteps.find((each) => each.number === number)
      const at = (row: 'A' | 'B'): string =>
        felt
          .filter((reading) => reading.step === number && reading.row === row)
          .map((reading) => cellOf(reading))
          .join('\n') || '–'
      return [
        step?.struck ? `${number} struck` : String(number),
        withUnit(step?.driveUpMm ?? null, 'mm') ?? '–',
        withUnit(step?.nutAngleDeg ?? null, '°') ?? '–',
        at('A'),
        at('B'),
      ]
    })
  return [partTitle(column, 'Drive-up in steps'), ...table(column, columns, rows), space(8)]
}

const blankWords: Readonly<Record<BlankReason, string>> = {
  'not-measured': 'not measured',
  'not-reachable': 'not reachable',
  'no-tool': 'no tool',
  'does-not-apply': 'does not apply',
  'not-noted': 'not noted',
}

/** What was left blank, each with its reason. */
export function blankFacts({ blanks }: MountDetails): Fact[] {
  return Object.entries(blanks).map(([field, reason]) => ({ label: fieldWords(field), value: blankWords[reason] }))
}

/** `seat.softFootMm` as `soft foot`: the last name of the path in words, without its unit. */
function fieldWords(path: string): string {
  const name = path.split('.').at(-1) ?? path
  return name
    .replace(/(Mm|Um|Nm|C|G|Deg|MmS)$/, '')
    .replaceAll(/([A-Z])/g, ' $1')
    .toLowerCase()
}
