import { describe, expect, it } from 'vitest'
import { formatLength, formatLengthRange, lengthDigits, parseNumber } from './length-units.ts'

describe('formatLength(um, unit)', () => {
  it('shows mm to 0.001, thou to 0.1, inches to 0.0001 and whole micrometres', () => {
    expect(formatLength(127, 'mm')).toBe('0.127 mm')
    expect(formatLength(127, 'thou')).toBe('5.0 thou')
    expect(formatLength(127, 'in')).toBe('0.0050 in')
    expect(formatLength(127, 'um')).toBe('127 µm')
  })
  it('writes a true minus, and no minus before zero', () => {
    expect(lengthDigits(-12, 'mm')).toBe('−0.012')
    expect(lengthDigits(-0.2, 'um')).toBe('0')
  })
  it('gives a range one symbol', () => {
    expect(formatLengthRange(90, 105, 'mm')).toBe('0.090 to 0.105 mm')
  })
})

describe('parseNumber(text)', () => {
  it.each([
    ['0.05', 0.05],
    ['0,05', 0.05],
    [' ,5 ', 0.5],
    ['12.', 12],
    ['-3', -3],
  ])('reads %s with comma or point', (text, value) => expect(parseNumber(text)).toBe(value))

  it.each(['', '1.234,5', '1,2,3', '5 mm', 'Infinity', '1e3', '.', '--1'])('refuses "%s"', (text) =>
    expect(parseNumber(text)).toBeUndefined(),
  )
})
