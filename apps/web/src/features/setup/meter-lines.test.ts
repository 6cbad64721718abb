import type { MeterBoardItem } from '@shaftbook/contract/meter-board'
import { describe, expect, it } from 'vitest'
import { askAbout, filledLines, pastedLines, withoutLines } from './meter-lines.ts'

const readAt = '2026-07-01T06:00:00.000Z'

describe('filledLines(lines, readAt)', () => {
  it('leaves out what is empty, takes a comma, and names what is no number', () => {
    const lines = {
      m1: { id: 'a', shown: '1204,5' },
      m2: { id: 'b', shown: ' ' },
      m3: { id: 'c', shown: 'broken' },
      m4: { id: 'd', shown: '-3' },
    }
    expect(filledLines(lines, readAt)).toEqual({
      ready: [{ id: 'a', meterId: 'm1', readAt, shownHours: 1204.5 }],
      unreadable: ['m3', 'm4'],
    })
  })
})

describe('pastedLines(text)', () => {
  it('reads tag and hours as a spreadsheet copies them, without its heading', () => {
    expect(pastedLines('Machine\tHours\nET05\t1204,5\nSL05\t88\textra\n')).toMatchObject([
      { number: 2, tag: 'ET05', hours: 1204.5 },
      { number: 3, tag: 'SL05', hours: 88 },
    ])
  })
  it('keeps a line without a number, to be mended', () => {
    expect(pastedLines('ET05;1204\nSL05;?')).toMatchObject([{ hours: 1204 }, { tag: 'SL05', hours: undefined }])
  })
  it('tells two equal lines apart', () => {
    const keys = pastedLines('ET05\t5\nET05\t5').map(({ key }) => key)
    expect(new Set(keys).size).toBe(2)
  })
})

describe('withoutLines(text, numbers)', () => {
  it('takes away the lines that were taken and nothing else', () => {
    expect(withoutLines('a\t1\nb\t2\r\nc\t?', new Set([1, 2]))).toBe('c\t?')
  })
})

describe('askAbout(meter, text, readAt)', () => {
  const meter = {
    lastShownHours: 1000,
    lastReadAt: '2026-06-30T06:00:00.000Z',
    rolloverAtHours: null,
  } as MeterBoardItem
  const at = new Date(readAt)
  it('asks about fewer hours than last time, and about more than have passed', () => {
    expect(askAbout(meter, '999', at)).toMatch(/exchanged/)
    expect(askAbout(meter, '1026', at)).toMatch(/More than the hours/)
  })
  it('asks nothing about what a day can bring, or where the meter rolls over', () => {
    expect(askAbout(meter, '1024', at)).toBeUndefined()
    expect(askAbout({ ...meter, rolloverAtHours: 10_000 }, '5', at)).toBeUndefined()
  })
})
