import { judgeKitCheck, type KitAnswer } from '@shaftbook/contract/judge-kit-check'
import type { Kit, KitLine } from '@shaftbook/contract/kits'
import type { KitCheckLine } from '@shaftbook/contract/mount-details'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { emptyKitLine, type Sheet, type TypedKitLine } from './sheet.ts'
import type { BearingType } from './band-of-place.ts'

/** A code as it is compared: without case, spaces and hyphens of writing. */
function compared(code: string): string {
  return code.toUpperCase().replaceAll(/[\s_]+/g, '')
}

/** The line of the kit that a scanned or typed code stands for: by part number or by designation. */
export function lineOfCode(kit: Kit, code: string): KitLine | null {
  const wanted = compared(code)
  if (wanted === '') return null
  return kit.lines.find((line) => [line.partNumber, line.designation].some((name) => compared(name) === wanted)) ?? null
}

/** The sheet's kit check with one line changed. */
export function withKitLine(sheet: Sheet, lineId: string, part: Partial<TypedKitLine>): Pick<Sheet, 'kitCheck'> {
  const before = sheet.kitCheck[lineId] ?? emptyKitLine()
  return { kitCheck: { ...sheet.kitCheck, [lineId]: { ...before, ...part } } }
}

const kindsOf = { sleeveCode: ['sleeve'], nutCode: ['nut'], lockingCode: ['washer', 'clip'] } as const
export type CodeKey = keyof typeof kindsOf

/** The line of the kit for sleeve, nut, or washer or clip. */
export function lineFor(kit: Kit | null, at: CodeKey): KitLine | undefined {
  const kinds: readonly string[] = kindsOf[at]
  return kit?.lines.find(({ kind }) => kinds.includes(kind))
}

/** The code of the part that went in: what the kit check says, else what was typed. */
export function fittedCode(sheet: Sheet, kit: Kit | null, at: CodeKey): string {
  const line = lineFor(kit, at)
  const checked = line && sheet.kitCheck[line.id]
  if (checked?.found === 'as-planned') return line?.designation ?? ''
  if (checked?.found === 'other' && checked.foundCode.trim() !== '') return checked.foundCode.trim()
  return sheet[at].trim()
}

/** The kit as compared: lines at which nothing was tapped are not told. */
export function kitCheckLines(sheet: Sheet, kit: Kit | null): KitCheckLine[] {
  return (kit?.lines ?? []).flatMap((line) => {
    const typed = sheet.kitCheck[line.id]
    if (!typed || typed.found === '') return []
    const { found } = typed
    return [
      {
        kitLineId: line.id,
        partId: found === 'as-planned' ? line.partId : null,
        kind: line.kind,
        plannedCode: line.designation,
        found,
        foundCode: found === 'as-planned' ? line.designation : typed.foundCode.trim(),
        quantity: line.quantity,
        unit: line.unit,
        reason: found === 'other' || found === 'missing' ? typed.reason.trim() : '',
      },
    ]
  })
}

/** What the rules say of each line that was compared, by its id. R-KIT-PAIR, R-RING, R-INCH. */
export function kitAnswersOf(
  sheet: Sheet,
  { position, bearingType, kit }: Pick<PositionOverview, 'position' | 'bearingType' | 'kit'>,
  type: BearingType,
): ReadonlyMap<string, KitAnswer> {
  const lines = kitCheckLines(sheet, kit)
  const shaftSystem = sheet.shaftSystem === '' ? position.shaftSystem : sheet.shaftSystem
  const answers = judgeKitCheck(lines, { position, shaftSystem, planned: bearingType, bearing: type })
  return new Map(lines.flatMap(({ kitLineId }, at) => (kitLineId && answers[at] ? [[kitLineId, answers[at]]] : [])))
}
