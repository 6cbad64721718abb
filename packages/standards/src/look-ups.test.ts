import { describe, expect, it } from 'vitest'
import { readCsv } from '../csv-text.ts'
import { sleeveByCode, sleeveForSrb } from './adapter-sleeves.ts'
import { boltBySize } from './bolts.ts'
import { classRange, rowForBore } from './clearance-classes.ts'
import { failureModeByClause, failureModeTree } from './failure-modes.ts'
import { knownGaps } from './gaps.ts'
import { greaseClassRows } from './grease-classes.ts'
import { greaseCompatibility, thickenerNames } from './grease-compatibility.ts'
import { inchShaftsNear } from './inch-shafts.ts'
import { nutByCode } from './lock-nuts.ts'
import { washerByCode } from './lock-washers.ts'
import { plummerBlockFor, plummerBlocksByCode } from './plummer-blocks.ts'
import { ratingLifeFactor } from './rating-life.ts'
import { guideRowForBore } from './reduction-guide.ts'
import { srbByBasicCode } from './srb-dimensions.ts'

describe('look-ups', () => {
  it.each([
    [100, 80],
    [100.0001, 100],
    [120, 100],
    [120.0001, 120],
  ])('bore %s mm lies in the row over %i mm, in clearance table and guide alike', (boreMm, overMm) => {
    expect(rowForBore(boreMm, 'tapered')).toMatchObject({ found: true, row: { overMm } })
    expect(guideRowForBore(boreMm)).toMatchObject({ found: true, row: { overMm } })
  })

  it('a row found carries standard, edition and certainty', () => {
    expect(rowForBore(100, 'tapered')).toMatchObject({ standard: 'ISO 5753-1', edition: null, certainty: 'high' })
    expect(ratingLifeFactor('a1_reliability', '95', 'a1')).toMatchObject({ edition: '2007', row: { value: 0.64 } })
  })

  it('class C3 of a 100 mm tapered bore is 110 to 140 µm', () => {
    const lookup = rowForBore(100, 'tapered')
    expect(lookup.found && classRange(lookup.row, 'C3')).toEqual({ minUm: 110, maxUm: 140 })
  })

  it.each([
    rowForBore(18, 'tapered'),
    rowForBore(1001, 'cylindrical'),
    guideRowForBore(24),
    srbByBasicCode('22297'),
    sleeveByCode('H999'),
    sleeveForSrb('24040K30'),
    sleeveForSrb('22204K'),
    nutByCode('KM99'),
    washerByCode('MB99'),
    plummerBlockFor('SN520', '22222K'),
    failureModeByClause('5.9'),
    boltBySize('M17', '8.8'),
    ratingLifeFactor('a1_reliability', '50', 'a1'),
    greaseCompatibility('lithium12oh', 'butter'),
    greaseCompatibility('butter', 'lithium12oh'),
  ])('outside a table there is no row but a sentence: %j', (lookup) => {
    expect(lookup.found).toBe(false)
    expect('reason' in lookup && lookup.reason).toMatch(/^[A-Z0-9].*\.$/)
  })

  it('22220 is 100 x 180 x 46', () => {
    expect(srbByBasicCode('22220')).toMatchObject({ row: { boreMm: 100, outsideDiameterMm: 180, widthMm: 46 } })
  })

  it('22220K takes H320 with KM20 and MB20 on a 90 mm shaft', () => {
    const sleeve = sleeveForSrb('22220K')
    expect(sleeve).toMatchObject({ row: { sleeveCode: 'H320', nutCode: 'KM20', lockingCode: 'MB20', shaftMm: 90 } })
    expect(nutByCode('KM20')).toMatchObject({ row: { threadMm: 100, pitchMm: 2, slots: 4 } })
  })

  it('a housing lists its bearings, and one of them its rings', () => {
    expect(plummerBlocksByCode('SN520').map((row) => row.bearingCode)).toContain('22220K')
    expect(plummerBlockFor('SN520', '22220K')).toMatchObject({ found: true })
    expect(plummerBlocksByCode('SN999')).toEqual([])
  })

  it('the tree of ISO 15243 has six groups, with 5.3.3.2 two levels below 5.3', () => {
    const tree = failureModeTree()
    expect(tree.map((node) => node.mode.clause)).toEqual(['5.1', '5.2', '5.3', '5.4', '5.5', '5.6'])
    const frictional = tree[2]?.children.find((node) => node.mode.clause === '5.3.3')
    expect(frictional?.children.map((node) => node.mode.clause)).toEqual(['5.3.3.2', '5.3.3.3'])
    expect(failureModeByClause('5.3.3.2')).toMatchObject({ row: { term: 'Fretting corrosion' } })
  })

  it('compatibility of greases is the same either way round, for every pair', () => {
    const names = Object.keys(thickenerNames)
    for (const one of names) {
      for (const other of names) {
        const rating = greaseCompatibility(one, other)
        expect(rating.found).toBe(true)
        expect(rating).toEqual(greaseCompatibility(other, one))
      }
    }
    expect(greaseCompatibility('lithium12oh', 'polyureaConventional')).toEqual({ found: true, rating: 'I' })
    expect(greaseCompatibility('lithium12oh', 'lithiumComplex')).toEqual({ found: true, rating: 'C' })
  })

  it('2 15/16 in (74.61 mm) is found near a 75 mm shaft, and nothing is found near 78 mm', () => {
    expect(inchShaftsNear(75, 0.5).map((row) => row.inchShaft)).toEqual(['2 15/16'])
    expect(inchShaftsNear(78, 0.5)).toEqual([])
  })

  it('NLGI 2 has a worked penetration of 265 to 295', () => {
    const values = greaseClassRows('nlgi_grade', '2').map((row) => row.value)
    expect(values).toEqual(expect.arrayContaining([265, 295]))
  })

  it('known gaps are sentences', () => {
    for (const gap of knownGaps) expect(gap).toMatch(/\.$/)
  })
})

describe('readCsv', () => {
  it('keeps commas, quotes and line breaks inside quoted fields', () => {
    expect(readCsv('a,b\r\n"x, ""y""\nz",2\r\n')).toEqual([{ a: 'x, "y"\nz', b: '2' }])
  })

  it('refuses a record with another number of fields than the header', () => {
    expect(() => readCsv('a,b\n1\n')).toThrow('record 2 has 1 fields')
    expect(() => readCsv('')).toThrow('empty')
  })
})
