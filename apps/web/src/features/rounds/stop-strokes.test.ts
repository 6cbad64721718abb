import { describe, expect, it } from 'vitest'
import { overdoseCautions, plannedStrokes, strokesG } from './stop-strokes.ts'

describe('strokes for a dose', () => {
  it.each([
    // 42 / 1.2 = 35 exactly; 42 / 1.3 = 32.3; 41.4 / 1.15 = 36
    [42, 1.2, 35],
    [42, 1.3, 33],
    [41.4, 1.15, 36],
    [0.5, 1.2, 1],
  ])('%s g at %s g a stroke are %s whole strokes, never too little', (doseG, gramsPerStroke, strokes) => {
    expect(plannedStrokes(doseG, gramsPerStroke)).toBe(strokes)
    expect(strokesG(strokes, gramsPerStroke)).toBeGreaterThanOrEqual(doseG)
  })

  it('are not known without a planned dose', () => {
    expect(plannedStrokes(null, 1.2)).toBeNull()
  })

  it('give whole milligrams', () => {
    expect(strokesG(3, 1.1)).toBe(3.3)
  })
})

describe('an overdose', () => {
  it('is asked about above 1.5 times the plan, and names outlet and temperature above twice', () => {
    expect(overdoseCautions(63, 42)).toEqual([])
    expect(overdoseCautions(63.6, 42).join()).toContain('1.5 times')
    expect(overdoseCautions(84.1, 42).join()).toContain('outlet')
    expect(overdoseCautions(500, null)).toEqual([])
  })
})
