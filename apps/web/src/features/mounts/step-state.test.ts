import { describe, expect, it } from 'vitest'
import type { Ask, Told } from './sheet-asks.ts'
import type { SheetScope, StepKey } from './sheet-steps.ts'
import type { Sheet } from './sheet.ts'
import { firstStepOf, stepOfKey, stepStates } from './step-state.ts'

const scope = { steps: ['safe', 'seat', 'drive', 'sign'] } as unknown as SheetScope
const ask = (step: StepKey, key: string, told: Told): Ask => ({ step, key, label: key, told: () => told })
const sheet = (blanks: Sheet['blanks'] = {}) => ({ blanks }) as Sheet
const none: ReadonlySet<StepKey> = new Set()
const seatState = (asks: Ask[], blanks?: Sheet['blanks'], asking = none) =>
  stepStates(scope, asks, sheet(blanks), asking).seat

describe('stepStates(scope, asks, sheet, asking)', () => {
  it('is nothing yet before anything is told', () =>
    expect(seatState([ask('seat', 'a', 'nothing'), ask('seat', 'b', 'nothing')])).toBe('nothing'))
  it('is begun while something lacks, or only part of it is there', () => {
    expect(seatState([ask('seat', 'a', 'all'), ask('seat', 'b', 'nothing')])).toBe('begun')
    expect(seatState([ask('seat', 'a', 'part')])).toBe('begun')
  })
  it('is told when everything is there', () => expect(seatState([ask('seat', 'a', 'all')])).toBe('told'))
  it('takes a reason for the number that is left out', () =>
    expect(seatState([ask('seat', 'a', 'nothing')], { a: 'no-tool' })).toBe('told'))
  it('asks before all else', () =>
    expect(seatState([ask('seat', 'a', 'all')], {}, new Set<StepKey>(['seat']))).toBe('asks'))
})

describe('stepOfKey(key, scope)', () => {
  it.each([
    ['reason', 'safe'],
    ['shaft.1x', 'seat'],
    ['mounted.0.B', 'drive'],
    ['driveSteps.2.A', 'drive'],
    ['outOfBandReason', 'sign'],
    ['blanks.shaft.1x', 'sign'],
  ])('%s stands at %s', (key, step) => expect(stepOfKey(key, scope)).toBe(step))
  it('what belongs to a step that does not apply is shown at the end', () =>
    expect(stepOfKey('lockedWith', scope)).toBe('sign'))
})

describe('firstStepOf(steps, scope)', () => {
  it('follows the order of the work', () => expect(firstStepOf(['sign', 'drive', 'seat'], scope)).toBe('seat'))
})
