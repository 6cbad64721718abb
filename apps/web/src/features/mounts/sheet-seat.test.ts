import { describe, expect, it } from 'vitest'
import { inchQuestion, ringPlan, shaftAnswer } from './sheet-seat.ts'
import { emptySeat, type SeatTexts, type Sheet } from './sheet.ts'

const sheet = (shaft: Partial<SeatTexts>, over: Partial<Sheet> = {}) =>
  ({ shaft: { ...emptySeat(), ...shaft }, housingSeatWidthMm: '', ringCount: '', ...over }) as Sheet
const onSleeve = { sleeve: true }
const verdictOf = (...typed: string[]) => {
  const places = Object.fromEntries(typed.map((text, at) => [['1x', '1y', '2x'][at], text])) as Partial<SeatTexts>
  const answer = shaftAnswer(sheet(places), onSleeve, 90, '1:12')
  return answer.kind === 'checked' ? answer.check.verdict : answer.kind
}

describe('shaftAnswer(sheet, scope, nominalMm, taper): 80 to 120 mm has h9 −87 µm and h10 −140 µm', () => {
  it.each([
    [['89,913'], 'inside-h9'],
    [['90', '89.912'], 'inside-h10'],
    [['89.859'], 'below-h10'],
    [['90.001', '89.95'], 'above-nominal'],
    [['45'], 'far'],
    [['3.5405 in'], 'inside-h9'], // 89.929 mm
    [['3.538in'], 'inside-h10'], // 89.865 mm
    [['3.5405'], 'far'],
    [['', ''], 'none'],
  ])('%s is %s', (typed, verdict) => expect(verdictOf(...typed)).toBe(verdict))
  it('says nothing of a shaft without a sleeve, or without a nominal diameter', () => {
    expect(shaftAnswer(sheet({ '1x': '89' }), { sleeve: false }, 90, null).kind).toBe('none')
    expect(shaftAnswer(sheet({ '1x': '89' }), onSleeve, null, '1:12').kind).toBe('none')
  })
})

describe('inchQuestion(sheet, scope)', () => {
  it('asks at 74.6 mm, which is 2 15/16 in or 75 mm', () =>
    expect(inchQuestion(sheet({ '1x': '74,6' }), onSleeve)?.metricShaftMm).toBe(75))
  it('does not ask at 90 mm', () => expect(inchQuestion(sheet({ '1x': '90' }), onSleeve)).toBeNull())
})

describe('ringPlan(sheet, position, bearingWidthMm)', () => {
  const plan = (width: string, locating: boolean, ringCount: Sheet['ringCount'] = '') =>
    ringPlan(sheet({}, { housingSeatWidthMm: width, ringCount }), { locating }, 40)
  it('gives two rings of 11.2 mm for a seat of 62.4 mm and a bearing of 40 mm', () =>
    expect(plan('62,4', true)).toMatchObject({ kind: 'rings', count: 2, widthMm: 11.2 }))
  it('gives one ring of the whole difference where one is put in', () =>
    expect(plan('62.4', true, '1')).toMatchObject({ count: 1, widthMm: 22.4 }))
  it('gives none at a position that does not locate', () => expect(plan('62.4', false)?.kind).toBe('none'))
  it('refuses a seat narrower than the bearing', () => expect(plan('39', true)?.kind).toBe('refused'))
  it('waits for a width that can be read', () => expect([plan('', true), plan('wide', true)]).toEqual([null, null]))
})
