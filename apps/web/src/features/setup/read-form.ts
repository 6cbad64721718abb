import { parseNumber, type LengthUnit } from '../../lib/length-units.ts'
import { plantInstant } from '../../lib/plant-time.ts'
import { readMeasure } from '../../ui/measure-text.ts'
import { bladeUnit, readBlades } from './blade-text.ts'
import type { FieldSpec, FormValue, FormValues } from './form-spec.ts'

export interface FormReading {
  readonly body: Record<string, unknown>
  /** What is wrong, by field, in the order of the form. */
  readonly faults: ReadonlyMap<string, string>
}

interface Reader {
  readonly unit: LengthUnit
  readonly timeZone: string
  readonly now: Date
}

type Read = { value: unknown } | { fault: string }

/** Reads what was typed into the body of a request; a number that is none, or a field left out, is a fault in words. */
export function readForm(fields: readonly FieldSpec[], values: FormValues, reader: Reader): FormReading {
  const body: Record<string, unknown> = {}
  const faults = new Map<string, string>()
  for (const field of fields) {
    const read =
      field.kind === 'blades' ? readBladesOf(field, values) : readField(field, values[field.name] ?? '', reader)
    if ('fault' in read) faults.set(field.name, read.fault)
    else body[field.name] = read.value
  }
  return { body, faults }
}

function readBladesOf(field: FieldSpec & { kind: 'blades' }, values: FormValues): Read {
  const text = (name: string) => {
    const typed = values[name] ?? ''
    return typeof typed === 'string' ? typed : typed.text
  }
  const read = readBlades(text(field.name), bladeUnit(text(field.kindField)))
  return read.kind === 'blades' ? { value: read.bladesUm } : { fault: read.sentence }
}

function readField(field: FieldSpec, typed: FormValue, reader: Reader): Read {
  if (field.kind === 'clearance') return readClearance(field, typed, reader.unit)
  const text = typeof typed === 'string' ? typed : typed.text
  if (field.kind === 'yes-no') return text === '' ? readEmpty(field) : { value: text === 'yes' }
  if (field.kind === 'since') return { value: text === '' ? null : text === 'now' ? reader.now.toISOString() : text }
  const trimmed = field.kind === 'password' ? text : text.trim()
  if (trimmed === '') return readEmpty(field)
  switch (field.kind) {
    case 'number':
      return readNumber(trimmed, field.whole ?? false)
    case 'moment': {
      const instant = plantInstant(trimmed, reader.timeZone)
      return instant ? { value: instant } : { fault: 'Give a day and a time' }
    }
    default:
      return { value: trimmed }
  }
}

function readEmpty(field: FieldSpec): Read {
  if (field.kind === 'number' && field.empty !== undefined) return { value: field.empty }
  if (field.kind === 'choice' && field.none !== undefined) return { value: null }
  if (field.optional) return { value: field.optional === 'null' ? null : '' }
  return {
    fault:
      field.kind === 'choice' || field.kind === 'yes-no'
        ? `Choose: ${lower(field.label)}`
        : `Enter: ${lower(field.label)}`,
  }
}

function readNumber(text: string, whole: boolean): Read {
  const value = parseNumber(text)
  if (value === undefined) return { fault: `"${text}" is not one number. Type it again, such as 12,5` }
  if (whole && !Number.isInteger(value)) return { fault: 'Enter a whole number' }
  return { value }
}

function readClearance(field: FieldSpec, typed: FormValue, unit: LengthUnit): Read {
  const read = readMeasure(typeof typed === 'string' ? { text: typed, unit: null } : typed, unit)
  if (read.kind === 'length') return { value: read.um }
  if (read.kind === 'not-a-number') return { fault: 'This is not one number. Type it again, such as 0,045' }
  return field.optional ? { value: null } : { fault: `Enter: ${lower(field.label)}` }
}

function lower(label: string): string {
  return label.charAt(0).toLowerCase() + label.slice(1)
}
