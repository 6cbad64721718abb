import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { likelyMeant, parseClearance, screenClearance } from './clearance-text.ts'
import { InputError } from './input-error.ts'

describe('typed clearances', () => {
  it('R-UNIT 0,05 typed in mm is 50 µm', () => {
    expect(parseClearance('0,05', 'mm')).toEqual({ kind: 'clearance', valueUm: 50, unit: 'mm' })
  })

  it.each(['2.0001', '2000.1 µm', '0.08 in', '130', '-0.01'])('%s (mm expected) is refused', (text) => {
    expect(() => parseClearance(text, 'mm')).toThrow(InputError)
  })

  it('exactly 2 mm is not refused but asked about', () => {
    expect(parseClearance('2', 'mm').kind).toBe('ask')
  })

  it('1.3 mm is asked about, with 0.13 mm first and 1.3 thou among what may be meant', () => {
    const answer = parseClearance('1.3', 'mm', { boreMm: 100 })
    expect(answer.kind).toBe('ask')
    const values = answer.kind === 'ask' ? answer.suggestions.map((suggestion) => suggestion.valueUm) : []
    expect(values[0]).toBe(130)
    expect(values).toContain(33.02)
  })

  it('thou typed where mm is expected (5.1 for 5.1 thou) is refused, not stored as 5.1 mm', () => {
    expect(() => parseClearance('5.1', 'mm')).toThrow('5.1 mm is more than 2 mm')
  })

  it('of a refused 5.1 mm 5.1 thou may have been meant, 129.54 µm; of 130 mm 130 µm', () => {
    const values = (um: number) => likelyMeant(um, 'mm', { boreMm: 120 }).map(({ valueUm }) => valueUm)
    expect(values(5_100)).toEqual([51, 129.54])
    expect(values(130_000)).toEqual([130])
  })

  it('0.13 typed where µm are expected is asked about, with 0.13 mm as what may be meant', () => {
    const answer = parseClearance('0.13', 'um')
    expect(answer).toMatchObject({ kind: 'ask', suggestions: [{ valueUm: 130, label: '0.13 mm' }] })
  })

  it('the threshold is 1.5 times the largest C5 of the bore: 345 µm for 100 mm, 420 µm for 100.5 mm', () => {
    expect(screenClearance(345, { boreMm: 100 }).kind).toBe('clearance')
    expect(screenClearance(345.001, { boreMm: 100 }).kind).toBe('ask')
    expect(screenClearance(420, { boreMm: 100.5 }).kind).toBe('clearance')
    expect(screenClearance(420.001, { boreMm: 100.5 }).kind).toBe('ask')
  })

  it('without a bore the threshold is 500 µm, and 700 µm is fine for a bore of 500 mm', () => {
    expect(screenClearance(500).kind).toBe('clearance')
    expect(screenClearance(501).kind).toBe('ask')
    expect(screenClearance(700, { boreMm: 500 }).kind).toBe('clearance')
  })

  it('zero is a clearance, and a bad one is for the verdict to say', () => {
    expect(screenClearance(0).kind).toBe('clearance')
  })

  it('no suggestion is itself a questioned clearance', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2_000_000 }), (nm) => {
        const answer = screenClearance(nm / 1000, { boreMm: 120, unit: 'mm' })
        const suggestions = answer.kind === 'ask' ? answer.suggestions : []
        const kinds = suggestions.map(({ valueUm }) => screenClearance(valueUm, { boreMm: 120 }).kind)
        expect(kinds.every((kind) => kind === 'clearance')).toBe(true)
      }),
    )
  })
})
