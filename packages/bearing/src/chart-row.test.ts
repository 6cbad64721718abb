import { reductionGuideTable } from '@shaftbook/standards/reduction-guide.data'
import { describe, expect, it } from 'vitest'
import { checkChartRow, type TypedChartRow } from './chart-row.ts'
import { InputError } from './input-error.ts'

const row: TypedChartRow = { overMm: 80, inclMm: 100, reductionMinUm: 45, reductionMaxUm: 60 }
const scaled = (by: number): TypedChartRow => ({ ...row, reductionMinUm: 45 * by, reductionMaxUm: 60 * by })

describe('a row of a chart as typed', () => {
  it('R-UNIT every row of the generic guide is plausible, with both tapers', () => {
    for (const guide of reductionGuideTable.rows) {
      const { driveUp12MinMm, driveUp12MaxMm, driveUp30MinMm, driveUp30MaxMm } = guide
      const check12 = checkChartRow({ ...guide, driveUpMinMm: driveUp12MinMm, driveUpMaxMm: driveUp12MaxMm })
      const check30 = checkChartRow({ ...guide, driveUpMinMm: driveUp30MinMm, driveUpMaxMm: driveUp30MaxMm }, '1:30')
      expect([check12.sentence, check30.sentence]).toEqual([null, null])
    }
  })

  it.each([
    ['millimetres for µm', 0.001, 'millimetres typed as µm'],
    ['thou for µm', 1 / 25.4, 'thou typed as µm'],
    ['µm for millimetres', 1000, 'µm typed as millimetres'],
    ['a decimal mark to the right', 10, 'one place too far'],
  ])('R-UNIT %s is asked about, and the right band is offered', (_, by, words) => {
    const check = checkChartRow(scaled(by))
    expect(check.verdict).toBe('ask')
    const right = check.suggestions.find(({ label }) => label.includes(words))
    expect(right?.minUm).toBeCloseTo(45, 2)
    expect(right?.maxUm).toBeCloseTo(60, 2)
  })

  it('R-RATIO a drive-up of the other taper is asked about', () => {
    expect(checkChartRow({ ...row, driveUpMinMm: 0.7, driveUpMaxMm: 0.9 }).verdict).toBe('plausible')
    expect(checkChartRow({ ...row, driveUpMinMm: 1.8, driveUpMaxMm: 2.3 }).verdict).toBe('ask')
    expect(checkChartRow({ ...row, driveUpMinMm: 1.8, driveUpMaxMm: 2.3 }, '1:30').verdict).toBe('plausible')
  })

  it('a band or a range of bores that runs backwards is refused', () => {
    expect(() => checkChartRow({ ...row, reductionMinUm: 60, reductionMaxUm: 45 })).toThrow(InputError)
    expect(() => checkChartRow({ ...row, overMm: 100 })).toThrow(InputError)
  })
})
