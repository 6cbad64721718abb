import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readCsv } from '../csv-text.ts'
import { adapterSleevesTable } from './adapter-sleeves.data.ts'
import { boltsTable } from './bolts.data.ts'
import { clearanceCylindricalBore } from './clearance-cylindrical-bore.data.ts'
import { clearanceTaperedBore } from './clearance-tapered-bore.data.ts'
import { inchShaftsTable } from './inch-shafts.data.ts'
import { lockNutsTable } from './lock-nuts.data.ts'
import { lockWashersTable } from './lock-washers.data.ts'
import { plummerBlocksTable } from './plummer-blocks.data.ts'
import { reductionGuideTable } from './reduction-guide.data.ts'
import { srbDimensionsTable } from './srb-dimensions.data.ts'

const csvRows = (name: string): number =>
  readCsv(readFileSync(new URL(`../csv/${name}.csv`, import.meta.url), 'utf8')).length

describe('the generated tables', () => {
  it('every CSV file has a generated twin', () => {
    const csvFiles = readdirSync(new URL('../csv', import.meta.url)).filter((name) => name.endsWith('.csv'))
    const dataFiles = readdirSync(new URL('.', import.meta.url)).filter((name) => name.endsWith('.data.ts'))
    expect(dataFiles).toHaveLength(csvFiles.length)
    expect(srbDimensionsTable.rows).toHaveLength(csvRows('srb_boundary_dimensions'))
    expect(lockNutsTable.rows).toHaveLength(csvRows('lock_nuts'))
  })

  it('tables and rows are frozen', () => {
    expect(Object.isFrozen(lockNutsTable)).toBe(true)
    expect(Object.isFrozen(lockNutsTable.rows)).toBe(true)
    expect(lockNutsTable.rows.every((row) => Object.isFrozen(row))).toBe(true)
  })

  it.each([
    ['tapered', clearanceTaperedBore],
    ['cylindrical', clearanceCylindricalBore],
  ])('ISO 5753-1 %s: bores join, and each class starts where the one before ends', (_, table) => {
    const classes = (row: (typeof table.rows)[number]): number[][] => [
      [row.c2MinUm, row.c2MaxUm],
      [row.cnMinUm, row.cnMaxUm],
      [row.c3MinUm, row.c3MaxUm],
      [row.c4MinUm, row.c4MaxUm],
      [row.c5MinUm, row.c5MaxUm],
    ]
    for (const [index, row] of table.rows.entries()) {
      const limits = classes(row)
      for (const [at, [min, max]] of limits.entries()) {
        expect(min).toBeLessThan(max ?? 0)
        expect(limits[at + 1]?.[0] ?? max).toBe(max)
      }
      expect(table.rows[index + 1]?.overMm ?? row.inclMm).toBe(row.inclMm)
    }
  })

  it('the CN residual minimum of the guide is CN min less band min, the C4 one C4 min less band max, except at 65 to 80', () => {
    const exceptions = reductionGuideTable.rows.filter((guide) => {
      const row = clearanceTaperedBore.rows.find((candidate) => candidate.overMm === guide.overMm)
      if (!row) throw new Error(`no clearance row for ${guide.overMm}`)
      const cn = row.cnMinUm - guide.reductionMinUm
      return guide.residualMinCnUm !== cn || guide.residualMinC4Um !== row.c4MinUm - guide.reductionMaxUm
    })
    expect(exceptions.map((row) => row.overMm)).toEqual([65])
  })

  it('the guide in micrometres is the CSV in millimetres', () => {
    const row = reductionGuideTable.rows.find((candidate) => candidate.overMm === 80)
    expect(row).toMatchObject({ reductionMinUm: 45, reductionMaxUm: 60, residualMinC3Um: 50, driveUp12MinMm: 0.7 })
  })

  it('certainty follows the sources: high to 500 mm tapered, to 355 mm cylindrical, lower above', () => {
    const at = (table: typeof clearanceTaperedBore, inclMm: number): string | undefined =>
      table.rows.find((row) => row.inclMm === inclMm)?.certainty
    expect([at(clearanceTaperedBore, 500), at(clearanceTaperedBore, 560)]).toEqual(['high', 'medium-high'])
    expect([at(clearanceCylindricalBore, 355), at(clearanceCylindricalBore, 400)]).toEqual(['high', 'medium'])
  })

  it('ISO 15: the bore is five times the bore code', () => {
    expect(srbDimensionsTable.rows.filter((row) => row.boreMm !== row.boreCode * 5)).toEqual([])
  })

  it('the nut, the bore and every bearing of a sleeve belong together', () => {
    const nuts = new Map(lockNutsTable.rows.map((row) => [row.nutCode, row]))
    const bearings = new Map(srbDimensionsTable.rows.map((row) => [`${row.basicCode}K`, row]))
    for (const sleeve of adapterSleevesTable.rows) {
      expect(nuts.get(sleeve.nutCode)?.threadMm ?? sleeve.bearingBoreMm).toBe(sleeve.bearingBoreMm)
      for (const code of (sleeve.fitsSrbCodes ?? '').split(';').filter(Boolean)) {
        expect(bearings.get(code)?.boreMm).toBe(sleeve.bearingBoreMm)
      }
    }
  })

  it('a washer fits over its thread and has an odd number of tabs', () => {
    for (const washer of lockWashersTable.rows) {
      expect(washer.outerTabs % 2).toBe(1)
      expect(washer.outsideDiameterMm).toBeGreaterThan(washer.boreMm)
      expect(washer.certainty).toBe('low')
    }
  })

  it('rings of a housing are its seat less the width of the bearing', () => {
    for (const row of plummerBlocksTable.rows)
      expect(row.ringTotalWidthMm).toBeCloseTo(row.seatWidthMm - row.bearingWidthMm, 6)
  })

  it('inch shafts are 25.4 mm to the inch', () => {
    for (const row of inchShaftsTable.rows) expect(row.inchShaftMm).toBeCloseTo(row.inchDecimal * 25.4, 2)
  })

  it('stress areas follow from diameter and pitch within 0.6 %', () => {
    for (const { diameterMm, pitchMm, stressAreaMm2, system } of boltsTable.rows) {
      const root = system === 'metric' ? 0.9382 : 0.9743
      const area = (Math.PI / 4) * (diameterMm - root * pitchMm) ** 2
      expect(Math.abs(area / stressAreaMm2 - 1)).toBeLessThan(0.006)
    }
  })
})
