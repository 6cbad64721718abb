import { describe, expect, it } from 'vitest'
import { checkLocating } from './locating.ts'

const shaft = (...locating: boolean[]) =>
  locating.map((value, index) => ({ tag: `F-12/${index + 1}`, locating: value }))

describe('locating positions of a shaft', () => {
  it('R-LOC exactly one locating position is right', () => {
    expect(checkLocating(shaft(true, false))).toMatchObject({ verdict: 'one', needsOverride: false, cautions: [] })
  })

  it('R-LOC none: the shaft floats', () => {
    expect(checkLocating(shaft(false, false))).toMatchObject({ verdict: 'none', needsOverride: true })
  })

  it('R-LOC two: the bearings fight, and both are named', () => {
    const check = checkLocating(shaft(true, true, false))
    expect(check).toMatchObject({ verdict: 'several', needsOverride: true, locatingTags: ['F-12/1', 'F-12/2'] })
    expect(check.sentence).toContain('F-12/1 and F-12/2')
  })

  it('a shaft without positions is no error yet', () => {
    expect(checkLocating([])).toMatchObject({ verdict: 'no-positions', needsOverride: false })
  })
})
