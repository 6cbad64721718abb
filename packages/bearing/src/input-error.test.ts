import { describe, expect, it } from 'vitest'
import { InputError, requireWithin } from './input-error.ts'

describe('InputError', () => {
  it('is a RangeError with a code, the field and a sentence', () => {
    const error = new InputError('too-large', 'boreMm', 'The bore is too large.')
    expect(error).toBeInstanceOf(RangeError)
    expect(error).toMatchObject({
      name: 'InputError',
      code: 'too-large',
      field: 'boreMm',
      message: 'The bore is too large.',
    })
  })

  it.each([
    [Number.NaN, 'not-a-number'],
    [Infinity, 'not-a-number'],
    [0.9, 'too-small'],
    [10.1, 'too-large'],
  ])('requireWithin(%s, 1 to 10) throws %s', (value, code) => {
    expect(() => requireWithin(value, 'x', 1, 10, 'mm')).toThrow(expect.objectContaining({ code, field: 'x' }))
  })

  it('names the argument and its unit in words', () => {
    expect(() => requireWithin(5, 'outsideDiameterMm', 10, 3000, 'mm')).toThrow(
      'Outside diameter (5 mm) is below 10 mm.',
    )
    expect(() => requireWithin(9, 'friction', 0, 1, '')).toThrow('Friction (9) is above 1.')
  })

  it('both ends are allowed', () => {
    expect(() => [requireWithin(1, 'x', 1, 10, 'mm'), requireWithin(10, 'x', 1, 10, 'mm')]).not.toThrow()
  })
})
