import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPastedChart, type PasteChoices, type PastedRow } from './chart-paste.ts'
import { chartTableText } from './chart-table-text.ts'

const choices: PasteChoices = {
  separator: null,
  roles: {},
  clearanceUnit: null,
  driveUpUnit: 'mm',
  taper: '1:12',
  clearanceClass: null,
}
const row: PastedRow = {
  overMm: 80,
  inclMm: 100,
  taper: '1:12',
  clearanceClass: null,
  reductionMinUm: 45,
  reductionMaxUm: 60,
  residualMinCnUm: 35,
  residualMinC3Um: 50,
  residualMinC4Um: 80,
  driveUpMinMm: 0.7,
  driveUpMaxMm: 0.9,
}
const bare = {
  residualMinCnUm: null,
  residualMinC3Um: null,
  residualMinC4Um: null,
  driveUpMinMm: null,
  driveUpMaxMm: null,
}
const rowsOf = (text: string, over: Partial<PasteChoices> = {}) => {
  const read = readPastedChart(text, { ...choices, ...over })
  return { rows: read.lines.map((line) => line.row), faults: read.lines.map((line) => line.faults), read }
}

describe('a pasted chart with a heading', () => {
  it('reads a table in millimetres with decimal commas, its columns by their headings in any order', () => {
    const text = [
      'Reduction min (mm);Reduction max (mm);Bore over;incl.;Drive-up min;Drive-up max;Residual CN (mm);Residual C3 (mm);Residual C4 (mm)',
      '0,045;0,060;80;100;0,7;0,9;0,035;0,050;0,080',
    ].join('\n')
    expect(rowsOf(text)).toMatchObject({ rows: [row], faults: [[]], read: { clearanceUnit: 'mm' } })
  })

  it('reads inches by the heading, exact to the nanometre', () => {
    const text = 'Bore over, mm\tUp to, mm\tLeast reduction (in)\tMost reduction (in)\n80\t100\t0.0018\t0.0024\n'
    expect(rowsOf(text).rows[0]).toMatchObject({ reductionMinUm: 45.72, reductionMaxUm: 60.96 })
  })

  it('reads two lines of headings, whose upper cells span several columns', () => {
    const text = [
      'Bore d (mm)\t\tReduction (µm)\t\tDrive-up 1:12 (mm)\t\tDrive-up 1:30 (mm)\t',
      'over\tincl\tmin\tmax\tmin\tmax\tmin\tmax',
      '80\t100\t45\t60\t0.7\t0.9\t1.75\t2.25',
    ].join('\n')
    expect(rowsOf(text).rows).toEqual([{ ...row, ...bare, driveUpMinMm: 0.7, driveUpMaxMm: 0.9 }])
    const slender = rowsOf(text, { taper: '1:30' })
    expect(slender.rows).toEqual([{ ...row, ...bare, taper: '1:30', driveUpMinMm: 1.75, driveUpMaxMm: 2.25 }])
  })

  it('takes no notice of a title over the table', () => {
    const text = 'Reduction of clearance, sheet M4\n\nBore;Reduction (µm)\n80-100;45-60'
    expect(rowsOf(text).rows).toEqual([{ ...row, ...bare }])
  })

  it('reads taper and class of each line where the table has columns for them', () => {
    const text = 'Taper,Class,Bore,Reduction\n1:12,all,80-100,45-60\n1:30,C3,over 80 incl 100,50-64'
    expect(rowsOf(text).rows).toEqual([
      { ...row, ...bare },
      { ...row, ...bare, taper: '1:30', clearanceClass: 'C3', reductionMinUm: 50, reductionMaxUm: 64 },
    ])
  })
})

describe('a pasted chart without a heading', () => {
  it.each([
    ['four columns', '80\t100\t45\t60', bare],
    ['ranges in one cell', '80-100\t45-60', bare],
    ['three columns of what is left', '80,100,45,60,35,50,80', { driveUpMinMm: null, driveUpMaxMm: null }],
    ['two columns of drive-up', '80 100 45 60 0,7 0,9', { ...bare, driveUpMinMm: 0.7, driveUpMaxMm: 0.9 }],
    ['all columns', '80;100;45;60;35;50;80;0,7;0,9', {}],
  ])('is read by the order in which charts print %s', (_, text, over) => {
    expect(rowsOf(text).rows).toEqual([{ ...row, ...over }])
  })

  it('is read in millimetres where every clearance lies below one', () => {
    expect(rowsOf('80\t100\t0,045\t0.060').rows).toEqual([{ ...row, ...bare }])
  })

  it('is read in the unit, taper and class that are chosen, by the columns that are assigned', () => {
    const read = rowsOf('1.8;2.4;80-100', {
      clearanceUnit: 'thou',
      taper: '1:30',
      clearanceClass: 'C4',
      roles: { 0: 'reductionMinUm', 1: 'reductionMaxUm', 2: 'bore' },
    })
    const limits = { reductionMinUm: 45.72, reductionMaxUm: 60.96 }
    expect(read.rows).toEqual([{ ...row, ...bare, ...limits, taper: '1:30', clearanceClass: 'C4' }])
  })

  it('lets a unit in a cell win over the chosen one', () => {
    expect(rowsOf('80-100;0,045 mm;60 µm').rows[0]).toMatchObject({ reductionMinUm: 45, reductionMaxUm: 60 })
  })
})

describe('the faults of a pasted chart', () => {
  it('stand at their lines, and leave the other lines as they are', () => {
    const { rows, faults, read } = rowsOf('80;100;45;60\n\n100;120;50;about 70\n120;140;;90\n140;160;1.234,5;100')
    expect(read.lines.map(({ number }) => number)).toEqual([1, 3, 4, 5])
    expect(rows.map((line) => line !== null)).toEqual([true, false, false, false])
    expect(faults).toEqual([
      [],
      ['Most reduction: “about 70” is not one number'],
      ['Least reduction is missing'],
      ['Least reduction: “1.234,5” is not one number'],
    ])
  })

  it('name lines that overlap by their places in the table, those that cannot be read counted', () => {
    const { faults } = rowsOf('80;100;45;60\nx;120;50;70\n90;120;50;70')
    expect(faults[0]).toEqual(['row 1 (80 to 100 mm) overlaps row 3 (90 to 120 mm)'])
    expect(faults[2]).toEqual(['row 3 (90 to 120 mm) overlaps row 1 (80 to 100 mm)'])
  })

  it.each([
    [
      'a bore range that is no range',
      'Bore;Reduction\n80-100;45-60\n100-120;45-60\n120;45-60',
      'Bore, both ends: “120” is no range such as 80-100',
    ],
    ['a length below nothing', '80;100;45;60\n100;120;-5;60', 'Least reduction: “-5” is below 0'],
    [
      'a taper that is none',
      'Taper;Bore;Reduction\n1:10;80-100;45-60\n1:12;100-120;50-70',
      '“1:10” is neither 1:12 nor 1:30',
    ],
  ])('say %s', (_, text, sentence) => {
    expect(rowsOf(text).faults.flat().join()).toContain(sentence)
    expect(rowsOf(text).faults.flat()).toHaveLength(1)
  })

  it('are asked about where a unit was probably meant otherwise', () => {
    const [line] = rowsOf('80;100;0.045;0.060', { clearanceUnit: 'um' }).read.lines
    expect(line?.faults).toEqual([])
    expect(line?.question).toMatch(/Was another unit meant\?.*45 to 60 µm/)
  })

  it('are the columns that no line can be read without', () => {
    const { read } = rowsOf('80;100;45;60', { roles: { 2: 'none' } })
    expect(read).toMatchObject({ missing: ['Least reduction'], lines: [{ row: null, faults: [] }] })
  })

  it('are columns that are said to be the same, by one end or by both', () => {
    expect(rowsOf('80;100;45;60', { roles: { 3: 'reductionMinUm' } }).read).toMatchObject({
      missing: ['Most reduction'],
      twice: ['Least reduction'],
      lines: [{ row: null }],
    })
    expect(rowsOf('80-100;45;60;45-60', { roles: { 3: 'reduction' } }).read.twice).toEqual([
      'Least reduction',
      'Most reduction',
    ])
  })

  it('are none of a text without numbers: there are no lines', () => {
    expect(rowsOf('nothing at all').read.lines).toEqual([])
    expect(rowsOf('').read.lines).toEqual([])
  })
})

/** Charts of one taper whose rows follow each other, with limits to the nanometre. */
const charts = fc
  .array(
    fc.record({
      length: fc.integer({ min: 1, max: 40 }),
      min: fc.integer({ min: 1000, max: 400_000 }),
      more: fc.integer({ min: 1, max: 100_000 }),
      residual: fc.option(fc.integer({ min: 0, max: 300_000 })),
      driveUp: fc.option(fc.integer({ min: 100, max: 9000 })),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((drawn) => {
    let over = 30
    return drawn.map(({ length, min, more, residual, driveUp }): PastedRow => {
      const overMm = over
      over += length
      return {
        ...bare,
        overMm,
        inclMm: over,
        taper: '1:12',
        clearanceClass: null,
        reductionMinUm: min / 1000,
        reductionMaxUm: (min + more) / 1000,
        residualMinC3Um: residual === null ? null : residual / 1000,
        driveUpMinMm: driveUp === null ? null : driveUp / 1000,
        driveUpMaxMm: driveUp === null ? null : (driveUp + 150) / 1000,
      }
    })
  })

describe('what is printed', () => {
  it('is read back as it was, in every unit', () => {
    fc.assert(
      fc.property(charts, fc.constantFrom('mm', 'um', 'in', 'thou'), (rows, unit) => {
        expect(rowsOf(chartTableText(rows, unit)).rows).toEqual(rows)
      }),
    )
  })

  it('is read back in every dress: separators, decimal marks, ranges in a cell or in two, quotes', () => {
    const dress = fc.record({
      mark: fc.constantFrom('\t', ';'),
      decimal: fc.constantFrom('.', ','),
      range: fc.constantFrom('-', ' – ', ' to ', ' … '),
      end: fc.constantFrom('\n', '\r\n'),
      quote: fc.constantFrom('', '"'),
    })
    fc.assert(
      fc.property(charts, dress, (rows, { mark, decimal, range, end, quote }) => {
        const print = (value: number | null) => (value === null ? '–' : String(value).replace('.', decimal))
        const pair = (a: number | null, b: number | null) => (a === null ? '' : `${print(a)}${range}${print(b)}`)
        const lines = rows.map((one) => [
          `over ${print(one.overMm)} incl ${print(one.inclMm)}`,
          pair(one.reductionMinUm, one.reductionMaxUm),
          print(one.residualMinC3Um),
          pair(one.driveUpMinMm, one.driveUpMaxMm),
        ])
        const heading = ['Bore (mm)', 'Reduction (µm)', 'Clearance left, C3 (µm)', 'Axial drive-up (mm)']
        const text = [heading, ...lines].map((cells) => cells.map((cell) => quote + cell + quote).join(mark)).join(end)
        expect(rowsOf(text).rows).toEqual(rows)
      }),
    )
  })
})
