import { chooseBand, residualMinimum } from '@shaftbook/bearing/band'
import { SiteSettings } from '@shaftbook/contract/access'
import type { BandBearing } from '@shaftbook/contract/band-of-position'
import { describe, expect, it } from 'vitest'
import { driveUpState, openStepAt, type DriveUpQuestion } from './drive-up-state.ts'
import { driveUpSaying } from './drive-up-words.ts'
import type { ReadingPair, TypedStep } from './sheet.ts'

const type: BandBearing = { kind: 'spherical-roller', series: '222', boreMm: 100, taper: '1:12', clearanceClass: 'C3' }
const query = { ...type, series: null }
const [band, minimum] = [chooseBand(query), residualMinimum(query)]

const pair = (a: string, b: string, meant = false): ReadingPair => ({ A: { text: a, meant }, B: { text: b, meant } })
const step = (a: string, b: string, more: Partial<TypedStep> = {}): TypedStep => ({
  pair: pair(a, b),
  driveUpMm: '',
  nutAngleDeg: '',
  struck: false,
  ...more,
})

function state(change: Partial<DriveUpQuestion> = {}) {
  return driveUpState({
    bench: [pair('0.125', '0,125')],
    steps: [],
    unit: 'mm',
    sayIn: 'mm',
    type,
    limits: {
      band: band.found ? band : null,
      noBand: null,
      residualMinimum: minimum.found ? minimum : null,
      judged: true,
      classUm: { minUm: 110, maxUm: 140 },
    },
    settings: SiteSettings.parse({}),
    byFeel: false,
    travelTrusted: true,
    pitchMm: null,
    typing: null,
    stacks: null,
    ...change,
  })
}

const says = (change: Partial<DriveUpQuestion>) => driveUpSaying(state(change), 'mm')

// 22220 K/C3: 45 to 60 µm are taken out, so from 0.125 mm the window is 0.065 to 0.080 mm.
describe('what the typed steps of a drive-up say', () => {
  it('texts with comma or point are read in their unit, and the way to go is said in the person’s', () => {
    expect(says({ steps: [step('0,101', '0.101')] })).toMatchObject({ word: 'Go on', figure: '0.021' })
    expect(says({ unit: 'um', bench: [pair('125', '125')], steps: [step('101', '101')] }).figure).toBe('0.021')
    expect(driveUpSaying(state({ steps: [step('0.101', '0.101')] }), 'um')).toMatchObject({ figure: '21' })
  })

  it('a struck step counts no more, and the step behind it is typed next', () => {
    const steps = [step('0.1', '0.1'), step('0.01', '0.01', { struck: true })]
    expect(says({ steps })).toMatchObject({ word: 'Go on', figure: '0.020' })
    expect(openStepAt(steps)).toBe(2)
    expect(openStepAt(steps.slice(0, 1))).toBe(0)
  })

  it('an unlikely reading is asked about before it is told from, until it is said to be meant', () => {
    const asked = state({ steps: [step('0.1', '0.1'), step('0.8', '0.08')] })
    expect(asked.asks).toBe(true)
    expect(driveUpSaying(asked, 'mm').word).toBe('Is it meant?')
    const meant = state({ steps: [{ ...step('', ''), pair: pair('0.8', '0.8', true) }] })
    expect(meant.asks).toBe(false)
    expect(driveUpSaying(meant, 'mm').word).toBe('Read again')
  })

  it('the noughts that a number begins with are no reading while they are typed', () => {
    const steps = [step('0.07', '0.0')]
    expect(says({ steps, typing: 'B' })).toMatchObject({ word: 'Read row B' })
    expect(says({ steps })).toMatchObject({ word: 'Too far' })
  })

  it('every step stands on the gauge, and the mean is that of the newest', () => {
    const { gauge } = state({ steps: [step('0.110', '0.112'), step('0.09', '0.094')] })
    expect(gauge.readings.map(({ step: at }) => at)).toEqual([0, 0, 1, 1])
    expect(gauge).toMatchObject({ benchUm: 125, meanUm: 92, aimUm: { minUm: 65, maxUm: 80 } })
  })

  it.each([
    [{ steps: [step('0.07', '0.07')] }, 'Stop here', '0.070', 'inside'],
    [{ steps: [step('0.06', '0.06')] }, 'Too far', '0.005', 'over'],
    [{ steps: [step('0.085', '0.085')] }, 'Nearly there', '0.005', 'under'],
    [{ byFeel: true }, 'No guidance here', null, 'plain'],
  ] as const)('%j says %s', (change, word, figure, tone) => {
    expect(says(change as Partial<DriveUpQuestion>)).toMatchObject({ word, figure, tone })
  })
})
