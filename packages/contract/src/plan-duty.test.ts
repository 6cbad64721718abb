import { describe, expect, it } from 'vitest'
import { dutyOf, intervalOf, proposalOf, type PlaceToday, wholeHours } from './plan-duty.ts'

const duty = {
  speedRpm: 1000,
  boreMm: 100,
  outsideDiameterMm: 180,
  widthMm: 46,
  levels: {
    temperature: 'below-65',
    dirt: 'light-soft',
    moisture: 'below-80',
    vibration: 'below-5',
    shaft: 'horizontal',
    bearing: 'spherical-roller',
  },
  loadOverRating: 0.05,
}
// R-INT: 14e6 / (1000 · √100) − 400 = 1000 h; R-DOSE: 0.005 · 180 · 46 = 41.4 g
const plan = { source: 'computed', duty, entry: 'side', doseG: 42, intervalHours: 1000 } as const
const place: PlaceToday = {
  speedRpm: 1000,
  attitude: 'horizontal',
  bearingKind: 'spherical-roller',
  boreMm: 100,
  outsideDiameterMm: 180,
  widthMm: 46,
}

describe('what a computed plan comes to by the register of today', () => {
  it('is what it came to then while nothing has changed', () => {
    const proposal = proposalOf(plan, place)
    expect(proposal).toEqual({ intervalHours: 1000, doseG: 41.4, intervalDiffers: false, doseDiffers: false })
  })

  it.each([
    // 14e6 / (n · 10) − 400
    [950, 1073, false],
    [930, 1105, true],
    [1060, 920, false],
    [1100, 872, true],
  ])('R-INT at %d rev/min it is %d h, which is noticed: %s', (speedRpm, intervalHours, intervalDiffers) => {
    expect(proposalOf(plan, { ...place, speedRpm })).toMatchObject({ intervalHours, intervalDiffers })
  })

  it.each([
    ['inclined', 500],
    ['vertical', 300],
  ] as const)('R-INT on a shaft that is %s now it is %d h', (attitude, intervalHours) => {
    expect(proposalOf(plan, { ...place, attitude })).toMatchObject({ intervalHours, intervalDiffers: true })
  })

  it('R-DOSE another bearing asks for another dose', () => {
    // 22226: d 130, D 230, B 64; 0.005 · 230 · 64 = 73.6 g
    const other = { ...place, boreMm: 130, outsideDiameterMm: 230, widthMm: 64 }
    expect(proposalOf(plan, other)).toMatchObject({ doseG: 73.6, doseDiffers: true })
  })

  it('a dose that was rounded up by hand is no difference', () => {
    const { outsideDiameterMm: _outside, widthMm: _width, ...sizeless } = duty
    expect(proposalOf({ ...plan, duty: sizeless, doseG: 42 }, place)).toMatchObject({ doseDiffers: false })
    expect(proposalOf({ ...plan, duty: sizeless, doseG: 60 }, place)).toMatchObject({ doseDiffers: true })
  })

  it('a speed outside the formula is a difference without a number', () => {
    expect(proposalOf(plan, { ...place, speedRpm: 7000 })).toMatchObject({ intervalHours: null, intervalDiffers: true })
  })

  it('a speed that the register does not know stays as it was told', () => {
    expect(proposalOf(plan, { ...place, speedRpm: null })).toMatchObject({
      intervalHours: 1000,
      intervalDiffers: false,
    })
  })

  it('a plan set by hand comes to nothing', () => {
    expect(proposalOf({ ...plan, source: 'by-hand' }, place)).toBeNull()
    expect(dutyOf({ source: 'computed', duty: { note: 'unreadable' } })).toBeNull()
  })
})

describe('dutyOf(plan)', () => {
  it('reads the duty of a computed plan, and its interval is the worked one: 1000 h × 0.084 = 84 h', () => {
    const levels = {
      ...duty.levels,
      temperature: '65-to-80',
      dirt: 'light-abrasive',
      moisture: '80-to-90',
      vibration: '5-to-10',
    }
    const read = dutyOf({ source: 'computed', duty: { ...duty, levels } })
    const interval = read && intervalOf(read)
    expect(interval?.kind === 'interval' && interval.intervalHours).toBeCloseTo(84, 9)
  })

  it('has none where a level is not known', () => {
    expect(dutyOf({ source: 'computed', duty: { ...duty, levels: { ...duty.levels, dirt: 'some' } } })).toBeNull()
  })
})

describe('wholeHours(hours)', () => {
  it('leaves off what is no whole hour, but not what only the arithmetic takes away', () => {
    // 0.5 · 0.4 · 0.7 · 0.6 = 0.084
    expect(wholeHours(1000 * 0.5 * 0.4 * 0.7 * 0.6)).toBe(84)
    expect(wholeHours(83.99)).toBe(83)
  })
})
