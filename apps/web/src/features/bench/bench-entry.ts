import { fromUm, toUm } from '@shaftbook/bearing/units'
import type { Field, Fields } from '@shaftbook/contract/calculations/field'
import { parseNumber, type LengthUnit } from '../../lib/length-units.ts'
import { noMeasure, readMeasure, type MeasureText } from '../../ui/measure-text.ts'

/** What is typed into the form, by field. Only lengths in µm have a unit of their own. */
export type Entry = Readonly<Record<string, MeasureText>>

/** The input of a calculation as it stands in the address: numbers in the units of the calculation. */
export type BenchSearch = Readonly<Record<string, string | number | boolean>>

export interface EntryRead {
  readonly input: Readonly<Record<string, unknown>>
  /** What is wrong, by field, in the order of the form. */
  readonly faults: ReadonlyMap<string, string>
}

/** The form as an address fills it: lengths in the person's unit where that shows them exactly, else in µm. */
export function startEntry(fields: Fields, search: BenchSearch, unit: LengthUnit): Entry {
  return Object.fromEntries(
    Object.entries(fields).map(([name, field]) => {
      const value = search[name]
      if (value === undefined) return [name, noMeasure]
      const text = String(value)
      return [name, isLength(field) ? lengthText(text, unit) : { text, unit: null }]
    }),
  )
}

/** Reads the form into the input of its calculation, with a fault in words for each field that can't be read. */
export function readEntry(fields: Fields, entry: Entry, unit: LengthUnit): EntryRead {
  const input: Record<string, unknown> = {}
  const faults = new Map<string, string>()
  for (const [name, field] of Object.entries(fields)) {
    const read = readField(field, entry[name] ?? noMeasure, unit)
    if ('fault' in read) faults.set(name, read.fault)
    else if (read.value !== undefined) input[name] = read.value
  }
  return { input, faults }
}

/** The address of an input, so that it can be sent to somebody. */
export function searchOf(input: EntryRead['input']): BenchSearch {
  return Object.fromEntries(
    Object.entries(input).map(([name, value]) => {
      if (Array.isArray(value)) return [name, value.join(typeof value[0] === 'number' ? ' ' : ', ')]
      if (typeof value === 'boolean') return [name, value ? 'yes' : 'no']
      return [name, value as string | number]
    }),
  )
}

/** Lengths in µm are typed and shown in the person's unit. */
export function isLength(field: Field): boolean {
  return (field.kind === 'quantity' || field.kind === 'quantities') && field.unit === 'µm'
}

type Read = { value: unknown } | { fault: string }

function readField(field: Field, { text, unit }: MeasureText, ownUnit: LengthUnit): Read {
  const typed = text.trim()
  if (typed === '') return readEmpty(field)
  switch (field.kind) {
    case 'quantity':
      return readNumber(field, typed, unit ?? ownUnit)
    case 'quantities':
      return readNumbers(field, typed, unit ?? ownUnit)
    case 'texts':
      return { value: typed.split(/[,;\n]+/).flatMap((part) => part.trim() || []) }
    case 'yes-no':
      return { value: typed === 'yes' || typed === 'true' }
    case 'choice':
      return Object.hasOwn(field.choices, typed) ? { value: typed } : { fault: choose(field) }
    default:
      return { value: typed.slice(0, 60) }
  }
}

function readEmpty(field: Field): Read {
  if (field.kind === 'texts') return { value: [] }
  if (!field.required) return { value: undefined }
  return { fault: field.kind === 'choice' || field.kind === 'yes-no' ? choose(field) : `Enter: ${lower(field.title)}` }
}

function readNumber(field: Field & { kind: 'quantity' }, text: string, unit: LengthUnit): Read {
  const value = numberIn(field, text, unit)
  if (value === undefined) return { fault: notANumber(text) }
  return field.whole && !Number.isInteger(value) ? { fault: 'Enter a whole number' } : { value }
}

function readNumbers(field: Field & { kind: 'quantities' }, text: string, unit: LengthUnit): Read {
  const parts = text.split(/[\s;]+/).filter((part) => part !== '')
  const values = parts.map((part) => numberIn(field, part, unit))
  const wrong = parts[values.indexOf(undefined)]
  return wrong === undefined ? { value: values } : { fault: notANumber(wrong) }
}

function numberIn(field: Field, text: string, unit: LengthUnit): number | undefined {
  if (!isLength(field)) return parseNumber(text)
  const read = readMeasure({ text, unit }, unit)
  return read.kind === 'length' ? read.um : undefined
}

function lengthText(text: string, unit: LengthUnit): MeasureText {
  const shown = text.split(/\s+/).map((part) => shownExactly(Number(part), unit))
  const all = shown.every((part) => part !== null)
  return all ? { text: shown.join(' '), unit } : { text, unit: 'um' }
}

/** A length with more decimals than these is no number to read. */
const shortDecimals: Readonly<Record<LengthUnit, number>> = { mm: 4, um: 3, in: 5, thou: 2 }

function shownExactly(um: number, unit: LengthUnit): string | null {
  if (!Number.isFinite(um) || Math.abs(um) > 1e7) return null
  const shown = Number(fromUm(um, unit).toFixed(shortDecimals[unit]))
  return toUm(shown, unit) === um ? String(shown) : null
}

function notANumber(text: string): string {
  return `"${text}" is not one number. Type it again, such as 12,5`
}

function choose({ title }: Field): string {
  return `Choose: ${lower(title)}`
}

function lower(title: string): string {
  return title.charAt(0).toLowerCase() + title.slice(1)
}
