import { z } from 'zod'

interface Described {
  readonly title: string
  readonly hint?: string | undefined
  readonly required: boolean
  readonly schema: z.ZodType
}

interface Range {
  readonly unit: string
  readonly min: number
  readonly max: number
}

export interface Quantity extends Described, Range {
  readonly kind: 'quantity'
  readonly whole: boolean
}
export interface Quantities extends Described, Range {
  readonly kind: 'quantities'
}
export interface Choice extends Described {
  readonly kind: 'choice'
  /** Each value with its words. */
  readonly choices: Readonly<Record<string, string>>
}
export interface YesNo extends Described {
  readonly kind: 'yes-no'
}
export interface Words extends Described {
  readonly kind: 'text' | 'texts' | 'day'
}

/** One input of a calculation: its schema, and what a form needs to ask for it. Ranges are checked by the calculation. */
export type Field = Quantity | Quantities | Choice | YesNo | Words
export type Fields = Readonly<Record<string, Field>>

/** A number of a unit ('' for none), from min to max. */
export function quantity(title: string, unit: string, min: number, max: number, hint?: string) {
  const schema = z.number().meta(about(title, { unit, min, max }, hint))
  return { kind: 'quantity', title, unit, min, max, hint, whole: false, required: true, schema } as const
}

/** A whole number of things. */
export function count(title: string, unit: string, min: number, max: number, hint?: string) {
  const schema = z.int().meta(about(title, { unit, min, max }, hint))
  return { kind: 'quantity', title, unit, min, max, hint, whole: true, required: true, schema } as const
}

/** One or more numbers of a unit, each from min to max. */
export function quantities(title: string, unit: string, min: number, max: number, atMost: number, hint?: string) {
  const each = z.number().meta({ minimum: min, maximum: max })
  const schema = z
    .array(each)
    .min(1)
    .max(atMost)
    .meta(about(title, { unit }, hint))
  return { kind: 'quantities', title, unit, min, max, hint, required: true, schema } as const
}

/** One of a few values, each with its words. */
export function choice<const Value extends string>(
  title: string,
  choices: Readonly<Record<Value, string>>,
  hint?: string,
) {
  const schema = z.enum(Object.keys(choices) as Value[]).meta(about(title, {}, hint))
  return { kind: 'choice', title, choices, hint, required: true, schema } as const
}

export function yesNo(title: string, hint?: string) {
  const schema = z.boolean().meta(about(title, {}, hint))
  return { kind: 'yes-no', title, hint, required: true, schema } as const
}

/** A short text, such as a code. */
export function text(title: string, hint?: string) {
  const schema = z
    .string()
    .trim()
    .min(1)
    .max(60)
    .meta(about(title, {}, hint))
  return { kind: 'text', title, hint, required: true, schema } as const
}

/** Up to 30 short texts, none of them needed. */
export function texts(title: string, hint?: string) {
  const schema = z
    .array(z.string().trim().min(1).max(60))
    .max(30)
    .meta(about(title, {}, hint))
  return { kind: 'texts', title, hint, required: true, schema } as const
}

export function day(title: string, hint?: string) {
  const schema = z.iso.date().meta(about(title, {}, hint))
  return { kind: 'day', title, hint, required: true, schema } as const
}

type Optional<F extends Field> = Omit<F, 'schema' | 'required'> & {
  readonly required: false
  readonly schema: z.ZodOptional<z.ZodNullable<F['schema']>>
}

/** The same input where it may be left out. */
export function optional<F extends Field>(field: F): Optional<F> {
  return { ...field, required: false, schema: field.schema.nullish() } as unknown as Optional<F>
}

function about(title: string, range: { unit?: string; min?: number; max?: number }, hint?: string) {
  return {
    title: range.unit ? `${title}, ${range.unit}` : title,
    ...(hint !== undefined && { description: hint }),
    ...(range.min !== undefined && { minimum: range.min }),
    ...(range.max !== undefined && { maximum: range.max }),
  }
}
