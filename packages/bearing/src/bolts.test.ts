import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readCsv } from '../../standards/csv-text.ts'
import { capBoltTorque, makerTorque, tighteningOrder, torqueCounts } from './bolts.ts'
import { InputError } from './input-error.ts'

/** Torques of the table, computed when it was written and compared with public torque cards. */
const tabled = readCsv(readFileSync(new URL('../../standards/csv/bolt_tightening.csv', import.meta.url), 'utf8'))

describe('cap bolts', () => {
  it('R-BOLT agrees with every torque of the table, in all three states of the thread, within 1 N·m or 1 %', () => {
    expect(tabled.length).toBeGreaterThan(80)
    for (const row of tabled) {
      const columns = { dry: row['torque_K0_20'], oiled: row['torque_K0_16'], moly: row['torque_K0_12'] }
      for (const state of ['dry', 'oiled', 'moly'] as const) {
        const torque = capBoltTorque(row['size'] ?? '', row['property_class'] ?? '', state)
        const wanted = Number(columns[state])
        expect(torque.found && Math.abs(torque.torqueNm - wanted)).toBeLessThanOrEqual(Math.max(1, wanted / 100))
      }
    }
  })

  it('R-BOLT M16 8.8 dry: within 3 % of the 225 N·m of public cards, steps of 30, 60 and 100 %', () => {
    const torque = capBoltTorque('M16', '8.8', 'dry')
    if (!torque.found) throw new Error(torque.reason)
    expect(Math.abs(torque.torqueNm / 225 - 1)).toBeLessThan(0.03)
    expect(torque.stepsNm.map((nm) => Math.round((nm / torque.torqueNm) * 100))).toEqual([30, 60, 100])
  })

  it('R-BOLT 100 lb·ft is 135.582 N·m', () => {
    expect(makerTorque(135.582, 'sheet of the housing').torqueLbFt).toBeCloseTo(100, 9)
  })

  it("R-BOLT the housing maker's figure is labelled as such, and ±5 % of it counts", () => {
    const torque = makerTorque(200, 'sheet of the housing')
    expect(torque.source).toMatchObject({ kind: 'maker-chart', title: 'sheet of the housing' })
    expect([189.9, 190, 210, 210.1].map((nm) => torqueCounts(nm, torque))).toEqual([false, true, true, false])
  })

  it('R-BOLT bolts are tightened crosswise', () => {
    expect(tighteningOrder(2)).toEqual([1, 2])
    expect(tighteningOrder(4)).toEqual([1, 3, 2, 4])
    expect(tighteningOrder(8)).toEqual([1, 5, 3, 7, 2, 6, 4, 8])
  })

  it('R-BOLT every bolt is named once', () => {
    for (let bolts = 2; bolts <= 24; bolts += 1) {
      expect(tighteningOrder(bolts).sort((a, b) => a - b)).toEqual(Array.from({ length: bolts }, (_, at) => at + 1))
    }
  })

  it('an unknown size has no row, and impossible numbers are refused', () => {
    expect(capBoltTorque('M17', '8.8', 'dry')).toMatchObject({ found: false })
    expect(() => makerTorque(0, 'sheet')).toThrow(InputError)
    expect(() => tighteningOrder(1)).toThrow(InputError)
    expect(() => tighteningOrder(4.5)).toThrow(InputError)
  })
})
