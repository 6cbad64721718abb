import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseNumber, splitDecimal } from './number-text.ts'

describe('a typed number', () => {
  it.each([
    ['0.05', 0.05],
    ['0,05', 0.05],
    [' ,5 ', 0.5],
    ['12.', 12],
    ['-3', -3],
    ['−3', -3],
    ['+3', 3],
  ])('R-UNIT %j is %f', (text, value) => {
    expect(parseNumber(text)).toBe(value)
  })

  it.each(['', ' ', '.', ',', '-', '--1', '1.2.3', '1.234,5', '1e3', '5 mm', 'five', '1 2'])(
    'R-UNIT %j is not one number',
    (text) => {
      expect(parseNumber(text)).toBeUndefined()
    },
  )

  it('R-UNIT every decimal is read as it is written, with either mark', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1_000_000, max: 1_000_000 }),
        fc.integer({ min: 0, max: 999 }),
        (whole, thousandths) => {
          const written = `${whole}.${String(thousandths).padStart(3, '0')}`
          expect(parseNumber(written)).toBe(Number(written))
          expect(parseNumber(written.replace('.', ','))).toBe(Number(written))
        },
      ),
    )
  })

  it('keeps what stands behind the number', () => {
    expect(splitDecimal('0,125 mm')).toEqual({ negative: false, whole: '0', decimals: '125', rest: 'mm' })
    expect(splitDecimal('mm')).toBeNull()
  })
})
