import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bladesSummary, bladesText, bladeUnit, readBlades } from './blade-text.ts'

describe('readBlades(text, unit)', () => {
  it.each([
    ['spaces and decimal commas', '0,05 0,10 0,15', 'mm'],
    ['commas and spaces', '0.05, 0.10, 0.15', 'mm'],
    ['commas alone, with decimal points', '0.05,0.10,0.15', 'mm'],
    ['decimal commas, a comma and a space between', '0,05, 0,10, 0,15', 'mm'],
    ['lines and semicolons of a pasted column', '0,05\n0,15;\r\n0,10\n', 'mm'],
    ['units behind', '50 µm 0,1 mm 0.15mm', 'in'],
    ['micrometres', '150 50 100', 'um'],
  ] as const)('takes %s, thin to thick', (_, text, unit) => {
    expect(readBlades(text, unit)).toEqual({ kind: 'blades', bladesUm: [50, 100, 150] })
  })

  it('reads inches exactly', () => {
    expect(readBlades('0.0015 0.002 0.0025', 'in')).toEqual({ kind: 'blades', bladesUm: [38.1, 50.8, 63.5] })
  })

  it.each([
    ['0,05 0,1 0,05', /0\.050 mm stands twice/],
    ['0,05 thin', /“thin” is not one thickness/],
    ['5 10 15', /“5” would be 5\.000 mm, too thick/],
    ['0', /“0” is no thickness/],
    ['-0,05', /“-0,05” is no thickness/],
    ['0,05,0,10', /is not one thickness/],
    ['  ', /Enter the blades/],
  ])('says what is wrong with %j', (text, sentence) => {
    expect(readBlades(text, 'mm')).toMatchObject({ kind: 'fault', sentence: expect.stringMatching(sentence) })
  })

  it('reads back what is shown for changing, to the nanometre', () => {
    const blades = fc.uniqueArray(fc.integer({ min: 1000, max: 2_000_000 }), { minLength: 1, maxLength: 30 })
    fc.assert(
      fc.property(blades, fc.constantFrom('mm' as const, 'in' as const), (nm, unit) => {
        const bladesUm = nm.toSorted((a, b) => a - b).map((value) => value / 1000)
        expect(readBlades(bladesText(bladesUm, unit), unit)).toEqual({ kind: 'blades', bladesUm })
      }),
    )
  })
})

it('a set of inch blades is typed in inches, any other in millimetres', () => {
  expect(['feeler-inch', 'feeler-metric', 'other'].map(bladeUnit)).toEqual(['in', 'mm', 'mm'])
})

it('a set is told by its number of blades and its ends', () => {
  expect(bladesSummary([50, 100, 150], 'mm')).toBe('3, 0.050 to 0.150 mm')
  expect(bladesSummary([50.8], 'in')).toBe('0.0020 in')
})
