import { InputError } from '@shaftbook/bearing/input-error'
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allCalculations } from './all-calculations.ts'
import type { Calculation } from './calculation.ts'
import type { Field } from './field.ts'

/** Texts that mean something to one calculation or another, and one that means nothing. */
const someTexts = [
  '22220 K/C3',
  '24040 K30',
  '6220',
  'H320',
  'KM20',
  'HM3160',
  'MB20',
  'SN520',
  'KP2K-20',
  'M16',
  '8.8',
]
const texts = fc.constantFrom(...someTexts, '222', '0,125', '5 thou', 'nonsense')
const days = fc.constantFrom('2026-11-24', '2024-02-29', '2030-01-01')

function valueOf(field: Field): fc.Arbitrary<unknown> {
  const number = (whole: boolean, { min, max }: { min: number; max: number }) =>
    whole
      ? fc.integer({ min, max })
      : fc.oneof(fc.double({ min, max, noNaN: true }), fc.constantFrom(min, max), roundBetween(min, max))
  const value = {
    quantity: () => number(field.kind === 'quantity' && field.whole, field as { min: number; max: number }),
    quantities: () => fc.array(number(false, field as { min: number; max: number }), { minLength: 1, maxLength: 6 }),
    choice: () => fc.constantFrom(...Object.keys((field as { choices: object }).choices)),
    'yes-no': () => fc.boolean(),
    text: () => texts,
    texts: () => fc.array(texts, { maxLength: 3 }),
    day: () => days,
  }[field.kind]() as fc.Arbitrary<unknown>
  return field.required ? value : fc.option(value, { nil: null })
}

/** Numbers as people type them, near the lower end. */
function roundBetween(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: Math.ceil(min), max: Math.max(Math.ceil(min), Math.floor(Math.min(max, min + 200))) })
}

function inputOf({ input }: Pick<Calculation, 'input'>): fc.Arbitrary<Record<string, unknown>> {
  return fc.record(Object.fromEntries(Object.entries(input).map(([name, field]) => [name, valueOf(field)])))
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : []
}

const named = allCalculations.map((calculation) => [calculation.name, calculation] as const)

/** Every number of every calculation just outside its range, below and above. */
const bounded = allCalculations.flatMap(({ name, input }) =>
  Object.entries(input).flatMap(([field, spec]) =>
    'min' in spec ? [[name, field, spec.min - 1] as const, [name, field, spec.max + 1] as const] : [],
  ),
)

describe('every calculation', () => {
  it('has a name and a title of its own', () => {
    expect(new Set(allCalculations.map(({ name }) => name)).size).toBe(allCalculations.length)
    expect(new Set(allCalculations.map(({ title }) => title)).size).toBe(allCalculations.length)
  })

  it.each(named)(
    '%s answers with source, rule, cautions and finite numbers by its schema, or refuses naming one of its fields',
    (_, calculation) => {
      let answers = 0
      fc.assert(
        fc.property(inputOf(calculation), (input) => {
          const { answered, faults } = outcomeOf(calculation, input)
          answers += answered ? 1 : 0
          expect(faults).toEqual([])
        }),
        { numRuns: 300 },
      )
      expect(answers).toBeGreaterThan(0)
    },
  )

  it.each(bounded)('%s refuses a %s of %s', (name, field, outside) => {
    const calculation = byName(name)
    const value = calculation.input[field]?.kind === 'quantities' ? [outside] : outside
    fc.assert(
      fc.property(inputOf(calculation), (input) => {
        const refused = outcomeOf(calculation, { ...input, [field]: value })
        expect(refused).toEqual({ answered: false, faults: [] })
      }),
      { numRuns: 5 },
    )
  })

  it.each(named)('%s takes no field that it does not know, and needs every required one', (_, { input, endpoint }) => {
    const [sample = {}] = fc.sample(inputOf({ input }), 1)
    const takes = (given: object): boolean => endpoint.body.safeParse(given).success
    expect(takes({ ...sample, somethingElse: 1 })).toBe(false)
    const needed = Object.keys(input).filter((name) => !takes(without(sample, name)))
    expect(needed).toEqual(Object.keys(input).filter((name) => input[name]?.required))
  })

  it.each(named)('%s names each of its fields and figures differently', (_, { input, result }) => {
    for (const parts of [input, result]) {
      const titles = Object.values(parts).map(({ title }) => title.trim())
      expect(new Set(titles).size).toBe(titles.length)
    }
  })

  it('no number is NaN, infinite or a text', () => {
    const numbers = allCalculations.flatMap(({ input }) =>
      Object.values(input).filter(({ kind }) => kind === 'quantity'),
    )
    const taken = numbers.flatMap(({ schema }) =>
      [Number.NaN, Infinity, -Infinity, '1'].filter((value) => schema.safeParse(value).success),
    )
    expect(numbers.length).toBeGreaterThan(100)
    expect(taken).toEqual([])
  })
})

/** Runs a calculation: whether it answered, and what is wrong with the answer or the refusal. */
function outcomeOf(calculation: Calculation, input: Record<string, unknown>): { answered: boolean; faults: string[] } {
  const { body, replies } = calculation.endpoint
  try {
    const result = calculation.run(body.parse(input))
    const schema = replies[200].safeParse(result)
    const faults = [
      ...(schema.error?.issues.map(({ path, message }) => `${path.join('.')}: ${message}`) ?? []),
      ...(numbersIn(result).every(Number.isFinite) ? [] : ['a number is not finite']),
      ...(result.source.title === '' || result.rule === '' ? ['no source or rule'] : []),
    ]
    return { answered: true, faults }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const knows = Object.hasOwn(calculation.input, error.field.replace(/\[.*$/, ''))
    return { answered: false, faults: knows && /[.?]$/.test(error.message) ? [] : [`${error.field}: ${error.message}`] }
  }
}

function without(given: object, name: string): object {
  return Object.fromEntries(Object.entries(given).filter(([key]) => key !== name))
}

function byName(name: string): Calculation {
  const found = allCalculations.find((calculation) => calculation.name === name)
  if (!found) throw new Error(`There is no calculation ${name}.`)
  return found
}
