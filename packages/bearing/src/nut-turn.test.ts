import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lockNutsTable } from '@shaftbook/standards/lock-nuts.data'
import { InputError } from './input-error.ts'
import { lockStepOfNut, travelForTurn, turnForTravel } from './nut-turn.ts'

describe('turning a nut of the tables', () => {
  it('KM20 (M100×2): 0.70 to 0.90 mm are 126 to 162°', () => {
    const least = turnForTravel(0.7, { nutCode: 'km 20' }, '1:12')
    expect(least.found && least.angleDeg).toBeCloseTo(126, 9)
    expect(least).toMatchObject({ pitchMm: 2, source: { row: 'KM20, M100x2' } })
    const most = turnForTravel(0.9, { nutCode: 'KM20' }, '1:12')
    expect(most.found && most.angleDeg).toBeCloseTo(162, 9)
    expect(most.found && most.wedgeUm).toBe(75)
  })

  it('HM3160 (Tr300×4): 2.0 to 3.0 mm are 180 to 270°', () => {
    expect(turnForTravel(2, { nutCode: 'HM3160' }, '1:12')).toMatchObject({ angleDeg: 180 })
    expect(turnForTravel(3, { nutCode: 'HM3160' }, '1:12')).toMatchObject({ angleDeg: 270 })
  })

  it('travel and angle invert each other for every nut of the table and both tapers', () => {
    const nut = fc.constantFrom(...lockNutsTable.rows.map((row) => row.nutCode))
    fc.assert(
      fc.property(
        nut,
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.constantFrom('1:12', '1:30'),
        (nutCode, travelMm, taper) => {
          const turn = turnForTravel(travelMm, { nutCode }, taper)
          if (!turn.found) throw new Error(turn.reason)
          fc.pre(turn.angleDeg <= 3600)
          const back = travelForTurn(turn.angleDeg, { nutCode }, taper)
          expect(back.found && back.travelMm).toBeCloseTo(travelMm, 9)
        },
      ),
    )
  })

  it('a pitch read from the part does without a code; an unknown nut has no row', () => {
    expect(turnForTravel(1, { pitchMm: 4 }, '1:30')).toMatchObject({ angleDeg: 90, wedgeUm: 33.333 })
    expect(turnForTravel(1, { nutCode: 'KM999' }, '1:12')).toMatchObject({ found: false, rule: 'R-RATIO' })
    expect(() => turnForTravel(1, {}, '1:12')).toThrow(InputError)
  })

  it('R-TAB M100×2 with 17 tabs counted: 5.29°, 29 µm of travel, 2.5 µm of wedge', () => {
    const step = lockStepOfNut('KM20', 17, '1:12')
    if (!step.found) throw new Error(step.reason)
    expect(step.stepDeg).toBeCloseTo(5.294, 3)
    expect(Math.round(step.axialUm)).toBe(29)
    expect(step.wedgeUm).toBeCloseTo(2.45, 2)
    expect(step.cautions[0]).toContain('never back')
  })

  it('R-TAB tabs from the table say that the count is of low certainty, and a clip has none', () => {
    const step = lockStepOfNut('KM20', null, '1:12')
    expect(step.found && step.cautions[0]).toContain('low certainty')
    expect(lockStepOfNut('HM3160', null, '1:12')).toMatchObject({ found: false, rule: 'R-TAB' })
  })
})
