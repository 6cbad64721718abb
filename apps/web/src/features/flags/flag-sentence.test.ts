import { describe, expect, it } from 'vitest'
import { flagCountsSentence } from './flag-counts-sentence.ts'
import { flagSentence } from './flag-sentence.ts'
import { formatLength, formatLengthRange } from '../../lib/length-units.ts'

const inMm = {
  length: (um: number) => formatLength(um, 'mm'),
  lengthRange: (fromUm: number, toUm: number) => formatLengthRange(fromUm, toUm, 'mm'),
}
const inThou = {
  length: (um: number) => formatLength(um, 'thou'),
  lengthRange: (fromUm: number, toUm: number) => formatLengthRange(fromUm, toUm, 'thou'),
}
const today = '2026-02-14'

describe('flagSentence(flag, words, today)', () => {
  const due = { dueOn: '2026-01-07', dueBy: 'calendar' as const, doseG: 42, greaseName: 'Marl EP 2', estimated: false }

  it('says how many days a greasing is late, and what is due', () => {
    expect(flagSentence({ kind: 'greasing-overdue', facts: due }, inMm, today)).toEqual({
      measure: '38 days late',
      detail: 'Due 7 Jan 2026 by the calendar; 42 g of Marl EP 2',
    })
  })
  it('marks a day that comes from average use as estimated', () => {
    const facts = { ...due, dueBy: 'hours' as const, dueRunHours: 12_400, estimated: true, dueOn: '2026-02-13' }
    expect(flagSentence({ kind: 'greasing-overdue', facts }, inMm, today)).toEqual({
      measure: '1 day late, estimated',
      detail: 'Due 13 Feb 2026 at 12\u00a0400 run hours, the day estimated from average use; 42 g of Marl EP 2',
    })
  })
  it('says how far a reduction lies outside its band, in the unit of the person', () => {
    const facts = { reductionUm: 72, bandMinUm: 45, bandMaxUm: 60, bandSource: 'generic guide' }
    expect(flagSentence({ kind: 'mount-over', facts }, inMm, today)).toEqual({
      measure: 'by 0.012 mm',
      detail: 'Reduced by 0.072 mm; band 0.045 to 0.060 mm (generic guide)',
    })
    expect(
      flagSentence({ kind: 'mount-under', facts: { ...facts, reductionUm: 25.4, bandMinUm: 50.8 } }, inThou, today),
    ).toEqual({
      measure: 'by 1.0 thou',
      detail: 'Reduced by 1.0 thou; band 2.0 to 2.4 thou (generic guide)',
    })
  })
  it('shows the uncertainty where the gauge cannot tell', () => {
    const facts = { reductionUm: 47, expandedUncertaintyUm: 6, bandMinUm: 45, bandMaxUm: 60 }
    expect(flagSentence({ kind: 'mount-not-proven', facts }, inMm, today).detail).toBe(
      'Reduced by 0.047 mm ± 0.006 mm; band 0.045 to 0.060 mm',
    )
  })
  it('says what is short of the least clearance', () => {
    const facts = { mountedMeanUm: 42, residualMinUm: 50 }
    expect(flagSentence({ kind: 'residual-too-small', facts }, inMm, today)).toEqual({
      measure: 'by 0.008 mm',
      detail: '0.042 mm left, the least is 0.050 mm',
    })
  })
  it('says what is too near the least clearance for the gauge', () => {
    const facts = { mountedMeanUm: 57, residualMinUm: 50 }
    expect(flagSentence({ kind: 'residual-not-proven', facts }, inMm, today)).toEqual({
      measure: 'with this gauge',
      detail: '0.057 mm left, too near the least of 0.050 mm',
    })
  })
  it('adds that the engineer wants the mount done again', () => {
    const facts = { mountedMeanUm: 42, residualMinUm: 50, doAgainReason: 'It will run hot' }
    expect(flagSentence({ kind: 'residual-too-small', facts }, inMm, today).detail).toBe(
      '0.042 mm left, the least is 0.050 mm; to be mounted again: It will run hot',
    )
  })
  it('invents no number where a fact is missing', () => {
    expect(flagSentence({ kind: 'mount-over', facts: { designation: '22220 K/C3' } }, inMm, today)).toEqual({
      measure: '',
      detail: '22220 K/C3 is fitted',
    })
    expect(flagSentence({ kind: 'greasing-overdue', facts: {} }, inMm, today)).toEqual({
      measure: 'Overdue',
      detail: '',
    })
  })
  it('names the positions that all hold the shaft', () => {
    expect(flagSentence({ kind: 'several-locating', facts: { locatingTags: ['A-DE', 'A-NDE'] } }, inMm, today)).toEqual(
      {
        measure: '2 positions hold the shaft',
        detail: 'Marked as locating: A-DE, A-NDE',
      },
    )
  })
})

describe('flagCountsSentence(counts)', () => {
  it('counts open flags by kind', () => {
    const byKind = [
      { kind: 'greasing-overdue' as const, open: 14 },
      { kind: 'mount-over' as const, open: 1 },
      { kind: 'no-locating' as const, open: 0 },
    ]
    expect(flagCountsSentence({ open: 15, putOff: 0, byKind })).toBe('15 open. Mounts: 1 over. Greasing: 14 overdue.')
  })
  it('says plainly when nothing is open, without a word of safety', () => {
    expect(flagCountsSentence({ open: 0, putOff: 3, byKind: [] })).toBe('Nothing needs anybody now.')
  })
})
