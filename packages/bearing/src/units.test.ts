import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { formatLength, fromUm, lengthUnits, parseLength, toNanometres, toUm, umFromNanometres } from './units.ts'

/** Oracle: exact arithmetic on fractions of nanometres, written apart from the parser. */
const exactNm = { mm: 1_000_000n, um: 1_000n, in: 25_400_000n, thou: 25_400n }

describe('units of length, R-UNIT', () => {
  it.each([
    ['0.05', 'mm', 50],
    ['0,05', 'mm', 50],
    [' 0,05 mm ', 'um', 50],
    ['130 µm', 'mm', 130],
    ['130 μm', 'mm', 130],
    ['5 thou', 'mm', 127],
    ['1 in', 'mm', 25_400],
    ['0.0050"', 'mm', 127],
    ['.045', 'mm', 45],
    ['2.0', 'thou', 50.8],
    ['−3', 'um', -3],
  ] as const)('parseLength(%j, %s) reads %s µm', (text, unit, valueUm) => {
    expect(parseLength(text, unit).valueUm).toBe(valueUm)
  })

  it.each(['', '  ', 'abc', '1.2.3', '0,05 0,06', '1e3', '.', '5 mil', '--1'])(
    'parseLength(%j) is refused with a sentence',
    (text) => {
      expect(() => parseLength(text, 'mm', 'before')).toThrow(InputError)
    },
  )

  it('a unit written behind the number wins over the expected one, and is kept', () => {
    expect(parseLength('5 thou', 'mm')).toEqual({ valueUm: 127, unit: 'thou', typed: '5 thou' })
  })

  it('every whole number of nanometres survives printing and reading in its unit exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: -2_000_000_000, max: 2_000_000_000 }), (nm) => {
        const um = umFromNanometres(nm)
        expect(toNanometres(um, 'um')).toBe(nm)
        expect(parseLength(formatLength(um, 'um', { decimals: 3, decimalMark: ',' }), 'mm').valueUm).toBe(um)
        expect(parseLength(formatLength(um, 'mm', { decimals: 6 }), 'in').valueUm).toBe(um)
      }),
    )
  })

  it('thou to 0.1 and inches to 0.0001 convert without any loss', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (tenths) => {
        const um = parseLength(`${Math.floor(tenths / 10)}.${tenths % 10}`, 'thou').valueUm
        expect(um).toBe((tenths * 254) / 100)
        expect(formatLength(um, 'thou')).toBe(`${Math.floor(tenths / 10)}.${tenths % 10} thou`)
        expect(formatLength(um, 'in')).toBe(`${(tenths / 10_000).toFixed(4)} in`)
      }),
    )
  })

  it('parseLength is exact to the nanometre for any typed decimals, halves away from zero', () => {
    const parts = fc.record({
      whole: fc.integer({ min: 0, max: 99 }),
      decimals: fc.integer({ min: 0, max: 99_999_999 }),
      unit: fc.constantFrom(...lengthUnits),
    })
    fc.assert(
      fc.property(parts, ({ whole, decimals, unit }) => {
        const digits = String(decimals).padStart(8, '0')
        const numerator = BigInt(`${whole}${digits}`) * exactNm[unit]
        const floor = numerator / 100_000_000n
        const nearest = 2n * (numerator % 100_000_000n) >= 100_000_000n ? floor + 1n : floor
        expect(toNanometres(parseLength(`${whole},${digits}`, unit).valueUm, 'um')).toBe(Number(nearest))
      }),
    )
  })

  it.each([
    [130.4, 'um', {}, '130 µm'],
    [130.5, 'um', {}, '131 µm'],
    [52.5, 'um', { decimals: 1 }, '52.5 µm'],
    [52.5, 'mm', { decimalMark: ',' as const }, '0,053 mm'],
    [-20, 'mm', {}, '−0.020 mm'],
    [-0.2, 'um', {}, '0 µm'],
    [127, 'thou', { withUnit: false }, '5.0'],
  ] as const)('formatLength(%s, %s, %j) prints %s', (um, unit, format, text) => {
    expect(formatLength(um, unit, format)).toBe(text)
  })

  it('numbers that are not finite, or beyond 10 m, are refused', () => {
    for (const value of [Number.NaN, Infinity, -Infinity, 1e9]) expect(() => toUm(value, 'mm')).toThrow(InputError)
  })

  it('fromUm is the inverse of toUm for values with 0.1 thou or 1 nm resolution', () => {
    expect(fromUm(127, 'thou')).toBe(5)
    expect(fromUm(130, 'mm')).toBe(0.13)
  })
})
