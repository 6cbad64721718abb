import type { Kit, KitChange } from '@shaftbook/contract/kits'
import type { z } from 'zod'
import { parseNumber } from '../../lib/length-units.ts'

/** A line of a kit as it is typed. */
export interface LineEntry {
  id: string
  partId: string
  /** How the chosen part is called. */
  partName: string
  quantity: string
  unit: string
  need: 'must' | 'may'
  reason: string
}

export interface KitEntry {
  name: string
  note: string
  lines: readonly LineEntry[]
}

/** Sentences by the path of the field in the request: `name`, `lines.2.quantity`. */
export type Faults = Readonly<Record<string, string>>

export function newLine(id: string): LineEntry {
  return { id, partId: '', partName: '', quantity: '1', unit: 'pc', need: 'must', reason: '' }
}

/** What a kit says, to be changed. */
export function entryOfKit(kit: Kit): KitEntry {
  return {
    name: kit.name,
    note: kit.note,
    lines: kit.lines.map(({ id, partId, designation, partNumber, quantity, unit, need, reason }) => ({
      id,
      partId,
      partName: partName({ designation, number: partNumber }),
      quantity: String(quantity),
      unit,
      need,
      reason,
    })),
  }
}

export function partName({ designation, number }: { designation: string; number: string }): string {
  return `${designation}, ${number}`
}

/** What has to be put right before the kit can be saved. */
export function kitFaults({ name, lines }: KitEntry): Faults {
  const faults: Record<string, string> = {}
  if (name.trim() === '') faults['name'] = 'Enter a name.'
  for (const [at, line] of lines.entries()) {
    const quantity = parseNumber(line.quantity)
    if (line.partId === '') faults[`lines.${at}.partId`] = 'Choose the part, or take the line out.'
    if (quantity === undefined || quantity <= 0 || quantity > 100_000)
      faults[`lines.${at}.quantity`] = 'Enter how many, such as 2 or 0,5.'
    if (line.unit.trim() === '') faults[`lines.${at}.unit`] = 'Enter pc, set, g …'
    if (lines.some((other, before) => before < at && other.partId !== '' && other.partId === line.partId))
      faults[`lines.${at}.partId`] = 'This part stands on a line above already: put the quantities together.'
  }
  return faults
}

/** The kit as the service takes it; the entry has no faults by now. */
export function kitBody({ name, note, lines }: KitEntry): Required<z.input<typeof KitChange>> {
  return {
    name: name.trim(),
    note: note.trim(),
    lines: lines.map((line) => ({
      id: line.id,
      partId: line.partId,
      quantity: parseNumber(line.quantity)!,
      unit: line.unit.trim(),
      need: line.need,
      reason: line.reason.trim(),
    })),
  }
}

/** The lines with one moved up or down by a place. */
export function moved<Line>(lines: readonly Line[], from: number, step: 1 | -1): Line[] {
  const to = from + step
  const next = [...lines]
  const [line] = next.splice(from, 1)
  if (line === undefined || to < 0 || to >= lines.length) return [...lines]
  next.splice(to, 0, line)
  return next
}
