import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { goNoGoWindow, stackFor, stackSequence } from './feeler-blades.ts'
import { InputError } from './input-error.ts'

const metric = [30, 40, 50, 60, 70, 80, 90, 100, 150, 200]
const thou = [1.5, 2, 3, 4, 5, 6, 8, 10].map((value) => value * 25.4)

/** Oracle: every subset of the set by its bits, in tenths of a micrometre. */
function fewestBySubsets(wanted: number, set: readonly number[], maxBlades: number): number | null {
  const sizes = Array.from({ length: 2 ** set.length }, (_, bits) => set.filter((__, at) => bits & (1 << at)))
    .filter((blades) => blades.length > 0 && blades.length <= maxBlades)
    .filter((blades) => blades.reduce((sum, um) => sum + Math.round(um * 10), 0) === Math.round(wanted * 10))
    .map((blades) => blades.length)
  return sizes.length > 0 ? Math.min(...sizes) : null
}

describe('feeler blades', () => {
  it('130 µm takes two blades of a metric set, 150 µm one', () => {
    expect(stackFor(130, metric)).toMatchObject({ kind: 'stack', totalUm: 130 })
    const stack = stackFor(130, metric)
    expect(stack.kind === 'stack' && stack.bladesUm).toHaveLength(2)
    expect(stackFor(150, metric)).toMatchObject({ bladesUm: [150] })
  })

  it('the stack has the fewest blades that any choice of blades can give', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 60 }), fc.integer({ min: 1, max: 4 }), (tens, maxBlades) => {
        const stack = stackFor(tens * 10, metric, maxBlades)
        const fewest = stack.kind === 'stack' ? stack.bladesUm.length : null
        expect(fewest).toBe(fewestBySubsets(tens * 10, metric, maxBlades))
      }),
    )
  })

  it('inch blades make inch thicknesses exactly: 9.5 thou is 8 + 1.5', () => {
    const stack = stackFor(241.3, thou)
    expect(stack).toMatchObject({ kind: 'stack', bladesUm: [203.2, 38.1], totalUm: 241.3 })
  })

  it('a thickness that no stack makes gives the next below and above', () => {
    expect(stackFor(125, metric)).toMatchObject({
      kind: 'no-stack',
      nextBelow: { totalUm: 120 },
      nextAbove: { totalUm: 130 },
    })
    expect(stackFor(20, metric)).toMatchObject({ kind: 'no-stack', nextBelow: null, nextAbove: { totalUm: 30 } })
  })

  it('the sequence runs from bench clearance down to the target, each thickness once', () => {
    const steps = stackSequence(125, 70, metric).stacks.map((stack) => stack.totalUm)
    expect(steps).toEqual([120, 110, 100, 90, 80, 70])
  })

  it('the sequence keeps its step, never leaves the range, and ends at the thinnest stack that is not below the target', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 60, max: 300 }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 1, max: 40 }),
        (bench, target, stepUm) => {
          const totals = stackSequence(bench, target, thou, { stepUm }).stacks.map((stack) => stack.totalUm)
          const all = stackSequence(bench, target, thou, { stepUm: 0 }).stacks.map((stack) => stack.totalUm)
          expect(totals.at(-1)).toBe(all.at(-1))
          expect(totals.every((um) => um <= bench && um >= target)).toBe(true)
          for (const [at, um] of totals.slice(1).entries())
            expect((totals[at] ?? 0) - um).toBeGreaterThan(stepUm - 0.001)
        },
      ),
    )
  })

  it('a set that makes nothing between bench clearance and target says so', () => {
    const sequence = stackSequence(25, 20, metric)
    expect(sequence.stacks).toEqual([])
    expect(sequence.cautions[0]).toContain('No stack')
  })

  it('R-U a go/no-go pair is a window: 70 passes, 80 stops, u 2.9 µm', () => {
    const window = goNoGoWindow(70, 80)
    expect(window).toMatchObject({ fromUm: 70, toUm: 80, middleUm: 75 })
    expect(window.standardUm).toBeCloseTo(2.887, 3)
  })

  it('an empty set, a blade of nothing and an upside-down window are refused', () => {
    expect(() => stackFor(100, [])).toThrow(InputError)
    expect(() => stackFor(100, [0])).toThrow(InputError)
    expect(() => goNoGoWindow(80, 80)).toThrow(InputError)
    expect(() => stackSequence(70, 100, metric)).toThrow(InputError)
  })
})
