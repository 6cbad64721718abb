import { InputError } from '@shaftbook/bearing/input-error'
import type { NoAnswer, Sourced } from '@shaftbook/bearing/source'
import { z } from 'zod'
import { endpoint, type Endpoint } from '../endpoint.ts'
import type { Field, Fields } from './field.ts'
import { shapeOf, type Figures } from './figure.ts'

export const CalculationSource = z
  .object({
    kind: z.enum(['position', 'maker-chart', 'generic-guide', 'standard', 'formula', 'site']),
    title: z.string(),
    edition: z.string().nullable(),
    row: z.string().nullable(),
    certainty: z.enum(['high', 'medium-high', 'medium', 'low']).nullable(),
  })
  .meta({ id: 'CalculationSource' })

const sourcedShape = {
  sentence: z
    .string()
    .nullable()
    .meta({ description: 'What has to be said first: a question, or why there is no answer' }),
  source: CalculationSource,
  rule: z.string().meta({ description: 'The id of a rule of the department, or a standard' }),
  cautions: z.array(z.string()),
}

/** What every calculation answers, beside its own figures. */
export type CalculationResult = Sourced & { sentence: string | null } & Readonly<Record<string, unknown>>

export type CalculationGroup = keyof typeof calculationGroups
export const calculationGroups = {
  clearance: 'Clearance',
  feeler: 'Feeler blades',
  'drive-up': 'Drive-up',
  seats: 'Shaft and seats',
  kit: 'Kit and stores',
  grease: 'Grease',
  life: 'Lubricant and life',
  assembly: 'Cap bolts and running',
} as const

export interface Calculation {
  readonly name: string
  readonly group: CalculationGroup
  readonly title: string
  /** The formula in words. */
  readonly words: string
  readonly input: Fields
  readonly result: Figures
  readonly endpoint: Endpoint & { readonly body: z.ZodObject; readonly replies: { readonly 200: z.ZodObject } }
  /** Runs it on an input that its schema has read; throws InputError naming the field. */
  readonly run: (input: Readonly<Record<string, unknown>>) => CalculationResult
}

interface Definition<I extends Fields, R extends Figures> {
  name: string
  group: CalculationGroup
  title: string
  words: string
  input: I
  result: R
  /** Our field for an argument that the formula knows by another name. */
  fieldOf?: Readonly<Record<string, keyof I & string>>
  run: (input: z.output<z.ZodObject<ShapeOf<I>>>) => (z.input<z.ZodObject<ShapeOf<R>>> & Said) | NoAnswer
}

type ShapeOf<P extends Readonly<Record<string, { readonly schema: z.ZodType }>>> = {
  -readonly [Name in keyof P]: P[Name]['schema']
}
type Said = Sourced & { found?: true; sentence?: string | null }

/** States a calculation: one definition gives the endpoint, the form and the run. */
export function calculation<const I extends Fields, const R extends Figures>(
  definition: Definition<I, R>,
): Calculation {
  const { name, group, title, words, input, result, fieldOf } = definition
  const body = z.strictObject(shapeOf(input))
  const reply = z.object({ ...shapeOf(result), ...sourcedShape })
  return {
    name,
    group,
    title,
    words,
    input,
    result,
    endpoint: endpoint({
      name: `calculate-${name}`,
      method: 'POST',
      path: `/api/v1/calculations/${name}`,
      access: 'signed-in',
      summary: `${title}. ${words}`,
      body,
      replies: { 200: reply },
    }),
    run: (values) => {
      for (const [field, spec] of Object.entries(input)) requireRange(field, spec, values[field])
      return answered(inOurFields(fieldOf ?? {}, () => definition.run(values as z.output<typeof body>)))
    },
  }
}

function answered(result: Said | NoAnswer): CalculationResult {
  if (result.found === false) {
    const { reason, source, rule, cautions } = result
    return { sentence: reason, source, rule, cautions }
  }
  return { ...result, sentence: result.sentence ?? null }
}

/** Refuses a number outside the range of its field, in the words of the form. */
function requireRange(field: string, spec: Field, value: unknown): void {
  if ((spec.kind !== 'quantity' && spec.kind !== 'quantities') || value === null || value === undefined) return
  const values = (Array.isArray(value) ? value : [value]) as readonly number[]
  for (const [index, number] of values.entries()) {
    if (number >= spec.min && number <= spec.max) continue
    const unit = spec.unit === '' ? '' : ` ${spec.unit}`
    const sentence = `${spec.title} takes ${spec.min} to ${spec.max}${unit}; ${number}${unit} is outside.`
    const path = Array.isArray(value) ? `${field}[${index}]` : field
    throw new InputError(number < spec.min ? 'too-small' : 'too-large', path, sentence)
  }
}

function inOurFields<T>(fieldOf: Readonly<Record<string, string>>, run: () => T): T {
  try {
    return run()
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    throw new InputError(error.code, fieldOf[error.field] ?? error.field, error.message)
  }
}
