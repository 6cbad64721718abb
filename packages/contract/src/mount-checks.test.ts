import { describe, expect, it } from 'vitest'
import { bearing, position } from './a-22220.ts'
import { SiteSettings } from './access.ts'
import { bandOfPosition } from './band-of-position.ts'
import { judgementOf, type MountQuestion } from './judge-mount.ts'
import { checkSentence } from './mount-checks.ts'
import type { Check } from './judgement.ts'

function checksOf(over: Partial<MountQuestion> = {}): Check[] {
  const reading = (moment: 'bench' | 'mounted', row: 'A' | 'B', clearanceUm: number) => ({ moment, row, clearanceUm })
  return judgementOf({
    method: 'feeler',
    bearing,
    bands: bandOfPosition(position, bearing, null),
    readings: [
      reading('bench', 'A', 140),
      reading('bench', 'B', 110),
      reading('mounted', 'A', 70),
      reading('mounted', 'B', 70),
    ],
    driveUpMm: 0.8,
    settings: SiteSettings.parse({}),
    ...over,
  }).checks
}

const inMm = (um: number): string => `${(um / 1000).toFixed(3)} mm`

describe('the checks of a mount', () => {
  // rows 30 µm apart, 15 % of 125 µm is 18.75 µm; one reading a row: u² = 30.995, U = 2 √30.995 = 11.1, of the
  // difference 2 √(2 · 30.995) = 15.7 µm; 800 / 55 = 14.545
  const expected = [
    ['R-ROW', 'warning', 'The rows differ by 30 µm; up to 18.8 µm agrees.'],
    ['R-ROW', 'pass', 'The rows differ by 0 µm; up to 10.5 µm agrees.'],
    ['R-CL2', 'pass', '125 µm against 110 µm to 140 µm.'],
    ['R-RED', 'pass', '55 µm against 45 µm to 60 µm (generic reduction guide, 80 < d ≤ 100 mm); U = 15.7 µm.'],
    ['R-RES', 'pass', '70 µm against at least 50 µm; U = 11.1 µm.'],
    ['R-RATIO', 'pass', 'Drive-up over reduction is 14.545; 12 to 20 is plausible.'],
  ]

  it('say in micrometres what was compared, against which limits, and how sure it is', () => {
    expect(checksOf().map(({ rule, outcome, sentence }) => [rule, outcome, sentence])).toEqual(expected)
  })

  it('are said in the unit of whoever reads them, by the numbers that they carry', () => {
    expect(checksOf().map((check) => checkSentence(check, inMm))).toEqual([
      'The rows differ by 0.030 mm; up to 0.019 mm agrees.',
      'The rows differ by 0.000 mm; up to 0.011 mm agrees.',
      '0.125 mm against 0.110 mm to 0.140 mm.',
      '0.055 mm against 0.045 mm to 0.060 mm (generic reduction guide, 80 < d ≤ 100 mm); U = 0.016 mm.',
      '0.070 mm against at least 0.050 mm; U = 0.011 mm.',
      'Drive-up over reduction is 14.545; 12 to 20 is plausible.',
    ])
  })

  it('are not done, in every unit alike, where readings are missing', () => {
    const checks = checksOf({ readings: [] })
    expect(checks.map(({ outcome }) => outcome)).toEqual(Array.from({ length: 6 }, () => 'not-done'))
    for (const check of checks) expect(checkSentence(check, inMm)).toBe(check.sentence)
  })

  it('fail outside their limits, and warn of a drive-up that cannot be', () => {
    const rows = (['A', 'B'] as const).flatMap((row) => [
      { moment: 'bench' as const, row, clearanceUm: 92 },
      { moment: 'mounted' as const, row, clearanceUm: 22 },
    ])
    const outcomes = checksOf({ readings: rows, driveUpMm: 0.4 }).map(({ rule, outcome }) => [rule, outcome])
    expect(outcomes.slice(2)).toEqual([
      ['R-CL2', 'fail'],
      ['R-RED', 'fail'],
      ['R-RES', 'fail'],
      ['R-RATIO', 'warning'],
    ])
  })
})
