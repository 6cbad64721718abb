import { InputError } from '@shaftbook/bearing/input-error'
import { parseLength } from '@shaftbook/bearing/units'
import { formatLength, lengthDigits, type LengthUnit } from '../../lib/length-units.ts'
import { exactText } from './chart-rows.ts'

/** A thicker one is no blade for a clearance; it was probably typed in another unit. */
const thickestUm = 3000

export type BladesRead = { kind: 'blades'; bladesUm: number[] } | { kind: 'fault'; sentence: string }

/** What the blades of a kind of set are marked in. */
export function bladeUnit(kind: string): 'mm' | 'in' {
  return kind === 'feeler-inch' ? 'in' : 'mm'
}

/**
 * Reads a typed or pasted list of blades, in any order, into µm from thin to thick. Spaces, line ends and semicolons part
 * them; commas too, where a space follows or its decimal marks are points.
 */
export function readBlades(text: string, unit: LengthUnit): BladesRead {
  const typed = words(text)
  if (typed.length === 0) return fault('Enter the blades, such as 0,05 0,10 0,15')
  const bladesUm: number[] = []
  for (const word of typed) {
    const um = readBlade(word, unit)
    if (um === null) return fault(`“${word}” is not one thickness: part the blades with spaces`)
    if (um <= 0) return fault(`“${word}” is no thickness: a blade is thicker than nothing`)
    if (um > thickestUm)
      return fault(`“${word}” would be ${formatLength(um, unit)}, too thick for a blade: add its unit`)
    if (bladesUm.includes(um)) return fault(`${formatLength(um, unit)} stands twice in the list`)
    bladesUm.push(um)
  }
  return { kind: 'blades', bladesUm: bladesUm.toSorted((a, b) => a - b) }
}

function words(text: string): string[] {
  // a unit that stands alone belongs to the number before it
  const joined = text.replaceAll(/(\d)\s+(?=(?:mm|[µμ]m|um|in|inch|thou)\b|")/gi, '$1')
  return joined
    .split(/[\s;]+/)
    .flatMap((word) => (/\d\.\d/.test(word) ? word.split(',') : word.replace(/,$/, '')))
    .filter((word) => word !== '')
}

function readBlade(word: string, unit: LengthUnit): number | null {
  try {
    return parseLength(word, unit).valueUm
  } catch (error) {
    if (error instanceof InputError) return null
    throw error
  }
}

function fault(sentence: string): BladesRead {
  return { kind: 'fault', sentence }
}

/** Blades as they are typed, one after another. */
export function bladesText(bladesUm: readonly number[], unit: LengthUnit): string {
  return bladesUm.map((um) => exactText(um, unit)).join(' ')
}

/** How many blades there are, and from what to what. */
export function bladesSummary(bladesUm: readonly number[], unit: LengthUnit): string {
  const [thinnest = 0, thickest] = [bladesUm[0], bladesUm.at(-1)]
  if (bladesUm.length < 2 || thickest === undefined) return formatLength(thinnest, unit)
  return `${bladesUm.length}, ${lengthDigits(thinnest, unit)} to ${formatLength(thickest, unit)}`
}
