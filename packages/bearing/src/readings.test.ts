import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { bearingReading, saggingRingReading, type Row } from './readings.ts'

const readings = (a: number[], b: number[]): { row: Row; um: number }[] => [
  ...a.map((um) => ({ row: 'A' as const, um })),
  ...b.map((um) => ({ row: 'B' as const, um })),
]

describe('readings of both rows', () => {
  it('R-MEAN each row weighs the same, whatever its number of readings', () => {
    const result = bearingReading(readings([100, 100, 100], [130]))
    expect(result).toMatchObject({ kind: 'reading', reading: { meanUm: 115, rowMeansUm: { A: 100, B: 130 } } })
  })

  it('R-MEAN is exact to the nanometre for thirds', () => {
    // (100 + 100 + 110)/3 = 103.333...; mean with 110 is 106.6666... µm
    const result = bearingReading(readings([100, 100, 110], [110]))
    expect(result).toMatchObject({ reading: { meanUm: 106.667 } })
  })

  it.each([
    // 10 µm counts while 15 % of the mean is less: mean 50 gives 7.5 µm
    [[45], [55], true],
    [[45], [55.001], false],
    // mean 200 gives 30 µm
    [[185], [215], true],
    [[184.9], [215.1], false],
  ])('R-ROW rows %j and %j agree: %s', (a, b, rowsAgree) => {
    const result = bearingReading(readings(a, b))
    expect(result).toMatchObject({ reading: { rowsAgree } })
    expect(result.kind === 'reading' && result.reading.cautions.length).toBe(rowsAgree ? 0 : 1)
  })

  it.each([
    [[120], [], 'B'],
    [[], [120], 'A'],
    [[], [], 'A'],
  ])('a row without a reading is refused: %j and %j', (a, b, row) => {
    expect(bearingReading(readings(a, b), 'before')).toMatchObject({ kind: 'refused', code: 'row-missing', row })
  })

  it('a reading below 0 or above 2 mm throws and names its place', () => {
    expect(() => bearingReading(readings([120, -1], [120]), 'after')).toThrow(InputError)
    expect(() => bearingReading(readings([120], [2001]), 'after')).toThrow('more than 2 mm')
    expect(() => bearingReading(readings([Number.NaN], [200]))).toThrow(InputError)
  })

  it('R-OVAL the reading of a sagging ring is half the sum of left, right and bottom', () => {
    expect(saggingRingReading(60, 70, 150)).toMatchObject({ readingUm: 140, rule: 'R-OVAL' })
  })
})
