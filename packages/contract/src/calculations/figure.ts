import { z } from 'zod'

interface Shown {
  readonly title: string
  readonly schema: z.ZodType
}

/** One part of a result: its schema, and what a page needs to show it. */
export type Figure =
  | (Shown & { readonly kind: 'number' | 'numbers'; readonly unit: string; readonly digits: number })
  | (Shown & { readonly kind: 'words'; readonly words: Readonly<Record<string, string>> })
  | (Shown & { readonly kind: 'text' | 'texts' | 'yes-no' })
  | (Shown & { readonly kind: 'rows'; readonly columns: Figures })
export type Figures = Readonly<Record<string, Figure>>

/** A number of a unit ('' for none), shown with so many significant digits. Lengths in µm are shown in the person's unit. */
export function figure(title: string, unit: string, digits = 3) {
  return { kind: 'number', title, unit, digits, schema: z.number().meta(titled(title, unit)) } as const
}

export function figures(title: string, unit: string, digits = 3) {
  return { kind: 'numbers', title, unit, digits, schema: z.array(z.number()).meta(titled(title, unit)) } as const
}

/** One of a few words of the calculation, such as a verdict. */
export function word<const Value extends string>(title: string, words: Readonly<Record<Value, string>>) {
  return { kind: 'words', title, words, schema: z.enum(Object.keys(words) as Value[]).meta({ title }) } as const
}

export function saying(title: string) {
  return { kind: 'text', title, schema: z.string().meta({ title }) } as const
}

export function sayings(title: string) {
  return { kind: 'texts', title, schema: z.array(z.string()).meta({ title }) } as const
}

export function whether(title: string) {
  return { kind: 'yes-no', title, schema: z.boolean().meta({ title }) } as const
}

/** A small table of the result. */
export function rows<const C extends Figures>(title: string, columns: C) {
  return { kind: 'rows', title, columns, schema: z.array(z.object(shapeOf(columns))).meta({ title }) } as const
}

type Maybe<F extends Figure> = Omit<F, 'schema'> & { readonly schema: z.ZodOptional<z.ZodNullable<F['schema']>> }

/** The same part where it may be missing. */
export function maybe<F extends Figure>(part: F): Maybe<F> {
  return { ...part, schema: part.schema.nullish() } as unknown as Maybe<F>
}

/** The schemas of fields or figures as the shape of an object. */
export function shapeOf<const P extends Readonly<Record<string, { readonly schema: z.ZodType }>>>(parts: P) {
  const shape = Object.fromEntries(Object.entries(parts).map(([name, { schema }]) => [name, schema]))
  return shape as { -readonly [Name in keyof P]: P[Name]['schema'] }
}

function titled(title: string, unit: string) {
  return { title: unit ? `${title}, ${unit}` : title }
}
