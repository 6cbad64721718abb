import { describe, expect, it } from 'vitest'
import { chartQuestions, nextRow, readChartRows, typedRow, type TypedRow } from './chart-rows.ts'

const row = {
  id: '01a20fc7-a01e-70fe-90b0-287fd282c2ee',
  overMm: 80,
  inclMm: 100,
  taper: '1:12' as const,
  clearanceClass: null,
  reductionMinUm: 45.5,
  reductionMaxUm: 60,
  residualMinCnUm: 35,
  residualMinC3Um: 50,
  residualMinC4Um: null,
  driveUpMinMm: 0.7,
  driveUpMaxMm: 0.9,
}
const changed = (cells: Partial<TypedRow['cells']>): TypedRow => {
  const typed = typedRow(row, 'mm')
  return { ...typed, cells: { ...typed.cells, ...cells } }
}

describe('readChartRows(rows, unit)', () => {
  it.each(['mm', 'um', 'in', 'thou'] as const)('reads back a kept row that was shown in %s', (unit) => {
    const { rows, faults } = readChartRows([typedRow(row, unit)], unit)
    expect(faults.size).toBe(0)
    expect(rows).toEqual([row])
  })
  it('takes commas, and clearances in the unit of the chart', () => {
    const { rows } = readChartRows([changed({ reductionMinUm: '2', reductionMaxUm: '2,5' })], 'thou')
    expect([rows[0]?.reductionMinUm, rows[0]?.reductionMaxUm]).toEqual([50.8, 63.5])
  })
  it('names a cell that is missing or not one number by its row and field', () => {
    const { faults } = readChartRows([typedRow(row, 'mm'), changed({ inclMm: '', driveUpMinMm: 'about 1' })], 'mm')
    expect([...faults]).toEqual([
      ['rows.1.inclMm', 'is missing'],
      ['rows.1.driveUpMinMm', 'not one number'],
    ])
  })
})

describe('nextRow(before)', () => {
  it('goes on where the row before it ends, with its taper', () => {
    const next = nextRow({ ...typedRow(row, 'mm'), taper: '1:30' })
    expect([next.cells.overMm, next.cells.inclMm, next.taper]).toEqual(['100', '', '1:30'])
  })
})

describe('chartQuestions(rows)', () => {
  it('asks nothing about a usual row', () => {
    expect(chartQuestions([row])).toEqual([])
  })
  it('asks about millimetres that were typed into a chart of µm, and says what may have been meant', () => {
    const [question] = chartQuestions([row, { ...row, reductionMinUm: 0.045, reductionMaxUm: 0.06 }])
    expect(question).toMatch(/^Row 2: .*Was another unit meant\?.*45 to 60 µm/)
  })
  it('asks about a drive-up that cannot go with its reduction', () => {
    expect(chartQuestions([{ ...row, driveUpMinMm: 0.07, driveUpMaxMm: 0.09 }])).toHaveLength(1)
  })
  it('leaves a range that runs downwards to the refusal', () => {
    expect(chartQuestions([{ ...row, overMm: 100, inclMm: 80 }])).toEqual([])
  })
})
