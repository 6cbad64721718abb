import { nutByCode } from '@shaftbook/standards/lock-nuts'
import type { Kit } from '@shaftbook/contract/kits'
import { fittedCode } from './kit-check.ts'
import type { ReadingPair, Sheet, TypedStep } from './sheet.ts'

/** How a zero point was found, as the record says it. Travel and angle count only from one found by resistance. */
export const zeroPoints = {
  resistance: 'Hand tight, then first resistance',
  mark: 'From a mark of the mount before',
  none: 'Not found',
} as const

export function travelTrusted(sheet: Sheet, seat: string): boolean {
  return seat === 'tapered-journal' || sheet.zeroPointMethod === zeroPoints.resistance
}

/** Pitch of the thread of the nut that went on, in mm; null where no table has the nut. */
export function nutPitchMm(sheet: Sheet, kit: Kit | null): number | null {
  const code = fittedCode(sheet, kit, 'nutCode').toUpperCase().replaceAll(' ', '')
  if (code === '') return null
  const nut = nutByCode(code)
  return nut.found ? nut.row.pitchMm : null
}

/** The last step that counts and has both rows; null before there is one. */
export function lastStep(steps: readonly TypedStep[]): TypedStep | null {
  const whole = ({ A, B }: ReadingPair): boolean => A.text.trim() !== '' && B.text.trim() !== ''
  return steps.findLast(({ pair, struck }) => !struck && whole(pair)) ?? null
}

/** The sheet with the last step as the end place: its readings are the first of the mounted clearance. */
export function endAt(sheet: Sheet, { pair, driveUpMm, nutAngleDeg }: TypedStep): Partial<Sheet> {
  const [, ...further] = sheet.mounted
  return { mounted: [pair, ...further], driveUpMm, nutAngleDeg }
}
