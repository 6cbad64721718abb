import { describe, expect, it } from 'vitest'
import { cellLines, isBlank, separatorOf, splitRange } from './paste-cells.ts'

describe('separatorOf(text)', () => {
  it.each([
    ['80\t100\t0,045\t0,060', 'tab'],
    ['80;100;0,045;0,060', 'semicolon'],
    ['Bore over, mm,Up to, mm\n80,100,45,60', 'comma'],
    ['80, 100, 45, 60', 'comma'],
    ['80 100 0,045 0,060', 'spaces'],
    ['80-100  45-60', 'spaces'],
  ] as const)('of %j is %s', (text, separator) => {
    expect(separatorOf(text)).toBe(separator)
  })
})

describe('cellLines(text, separator)', () => {
  it('leaves empty lines out and keeps the numbers of the others', () => {
    expect(cellLines('80;100\r\n\r\n;;\r\n100;120\r\n', 'semicolon')).toEqual([
      { number: 1, cells: ['80', '100'] },
      { number: 4, cells: ['100', '120'] },
    ])
  })
  it('takes quoted cells with the separator, a quote or a line end in them', () => {
    expect(cellLines('"Bore,\nover","a ""b"""\n"0,045",100', 'comma')).toEqual([
      { number: 1, cells: ['Bore, over', 'a "b"'] },
      { number: 3, cells: ['0,045', '100'] },
    ])
  })
  it('keeps an inch mark for what it is', () => {
    expect(cellLines('0.002"\t0.003"\n"open\t1', 'tab').map(({ cells }) => cells)).toEqual([
      ['0.002"', '0.003"'],
      ['"open', '1'],
    ])
  })
  it('keeps an empty cell at the end of a line', () => {
    expect(cellLines('80;100;;\n', 'semicolon')[0]?.cells).toEqual(['80', '100', '', ''])
  })
  it('parts by wide gaps where there are any, and by every space where there are none', () => {
    expect(cellLines('80 to 100   45 to 60', 'spaces')[0]?.cells).toEqual(['80 to 100', '45 to 60'])
    expect(cellLines(' 80 100 45 60 ', 'spaces')[0]?.cells).toEqual(['80', '100', '45', '60'])
  })
})

describe('splitRange(text)', () => {
  it.each([
    '80-100',
    '80 – 100',
    '80 to 100',
    '80…100',
    '80...100',
    '80..100 mm',
    'over 80 incl 100',
    'over 80 up to and including 100',
    'Over 80 mm up to 100 mm',
    '> 80 ≤ 100',
    '80 < d ≤ 100',
    '80 100',
  ])('reads %j as 80 to 100', (text) => {
    const range = splitRange(text)
    expect([parseFloat(range?.from ?? ''), parseFloat(range?.to ?? '')]).toEqual([80, 100])
  })
  it('keeps decimal marks and the unit as they were typed', () => {
    expect(splitRange('0,045 - 0,060 mm')).toEqual({ from: '0,045mm', to: '0,060mm' })
    expect(splitRange('0.0018-0.0024"')).toEqual({ from: '0.0018"', to: '0.0024"' })
  })
  it.each(['100', '-5', '-5 to 10', '1.234,5', '80-100-120', '1:12', 'row 80 of 100', '', '80,100'])(
    'does not read %j as a range',
    (text) => {
      expect(splitRange(text)).toBeNull()
    },
  )
})

it.each(['', ' ', '-', '–', '…', 'n/a', 'N/A'])('isBlank(%j): tables print nothing so', (text) => {
  expect(isBlank(text)).toBe(true)
})
it('isBlank is false of a zero', () => {
  expect(isBlank('0')).toBe(false)
})
