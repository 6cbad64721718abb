import { describe, expect, it } from 'vitest'
import { changeOver, firstFill, type FillInput } from './grease-change.ts'
import { InputError } from './input-error.ts'

describe('change-over of grease', () => {
  it('R-CHG a compatible grease is flushed in with three doses at a third of the interval', () => {
    expect(changeOver('lithium12oh', 'lithiumComplex', 900)).toMatchObject({ verdict: 'flush', flushEveryHours: 300 })
  })

  it('R-CHG a borderline one is flushed in and tested or watched', () => {
    expect(changeOver('lithium12oh', 'calciumSulfonate', 900)).toMatchObject({
      verdict: 'flush-and-test',
      flushEveryHours: 300,
    })
  })

  it.each([
    ['lithium12oh', 'polyureaConventional'],
    [null, 'lithium12oh'],
    ['lithium12oh', null],
  ] as const)('R-CHG from %s to %s the housing is stripped', (from, to) => {
    expect(changeOver(from, to, 900)).toMatchObject({ verdict: 'strip', flushEveryHours: null })
  })

  it('R-CHG the result says that the charts contradict each other', () => {
    expect(changeOver('lithium12oh', 'lithiumComplex').cautions.join(' ')).toContain('contradict')
  })
})

describe('first fill', () => {
  const input: FillInput = { boreMm: 100, outsideDiameterMm: 180, widthMm: 46, massKg: 4.9, level: 'normal' }

  it('R-FILL a 22220 of 4.9 kg takes 181 cm³, about 163 g', () => {
    const fill = firstFill(input)
    expect(Math.round(fill.bearingVolumeCm3)).toBe(181)
    expect(Math.round(fill.bearingG)).toBe(163)
    expect(fill.housingG).toBeNull()
  })

  it.each([
    ['normal', 180, 360],
    ['slow-or-dusty', 360, 540],
    ['very-slow-and-dirty', 630, 720],
    ['near-speed-limit', 180, 270],
  ] as const)('R-FILL a housing of 1000 cm³, %s, takes %i to %i g', (level, min, max) => {
    const fill = firstFill({ ...input, level, housingVolumeCm3: 1000 })
    expect(fill.housingG?.min).toBeCloseTo(min, 9)
    expect(fill.housingG?.max).toBeCloseTo(max, 9)
  })

  it('a mass heavier than solid steel is refused', () => {
    expect(() => firstFill({ ...input, massKg: 7 })).toThrow(InputError)
  })
})
