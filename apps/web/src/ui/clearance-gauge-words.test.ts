import { describe, expect, it } from 'vitest'
import type { GaugeInput } from './clearance-gauge-geometry.ts'
import { gaugeWords, pastGaugeWords } from './clearance-gauge-words.ts'

const both = [
  { um: 117, row: 'A' as const },
  { um: 117, row: 'B' as const },
]
const input: GaugeInput = Object.freeze({
  benchUm: 150,
  bandUm: { minUm: 45, maxUm: 60 },
  classUm: null,
  residualMinUm: 80,
  readings: both,
  meanUm: null,
})

describe('gaugeWords(input, unit)', () => {
  it('asks for the bench clearance, then for a band', () => {
    expect(gaugeWords({ ...input, benchUm: null }, 'mm').headline).toBe('No bench clearance yet')
    expect(gaugeWords({ ...input, bandUm: null }, 'mm').headline).toBe('No band for this position')
  })
  it('says where to stop before the first reading', () => {
    expect(gaugeWords(input, 'mm')).toEqual({
      headline: 'Stop between 0.090 and 0.105 mm',
      detail: 'Bench clearance is 0.150 mm; the band takes out 0.045 to 0.060 mm.',
      tone: 'plain',
    })
  })
  it('says how much further in the unit of the person', () => {
    expect(gaugeWords({ ...input, meanUm: 117 }, 'mm').headline).toBe('0.012 mm to go')
    expect(gaugeWords({ ...input, meanUm: 117 }, 'um').headline).toBe('12 µm to go')
    expect(gaugeWords({ ...input, meanUm: 117 }, 'thou').headline).toBe('0.5 thou to go')
  })
  it('says inside at both edges of the window', () => {
    for (const meanUm of [90, 105]) expect(gaugeWords({ ...input, meanUm }, 'mm').tone).toBe('inside')
  })
  it('says how much too far, and names the residual minimum when it is passed', () => {
    const words = gaugeWords({ ...input, meanUm: 76 }, 'mm')
    expect(words.headline).toBe('0.014 mm too far')
    expect(words.detail).toContain('under the residual minimum of 0.080 mm')
    expect(gaugeWords({ ...input, meanUm: 86 }, 'mm').detail).not.toContain('residual')
  })
  it('asks for the second row when only one is read', () => {
    expect(gaugeWords({ ...input, meanUm: 98, readings: [{ um: 98, row: 'A' }] }, 'mm').detail).toContain('read row B')
    expect(gaugeWords({ ...input, meanUm: 98 }, 'mm').detail).not.toContain('row')
  })
  it('does not say stop here on the strength of one row', () => {
    const words = gaugeWords({ ...input, meanUm: 98, readings: [{ um: 98, row: 'B' }] }, 'mm')
    expect(words.tone).toBe('plain')
    expect(words.detail).toContain('Do not lock the nut yet')
  })
  it('doubts a mounted clearance above the bench clearance', () => {
    expect(gaugeWords({ ...input, meanUm: 160 }, 'mm').headline).toBe('Larger than on the bench')
  })
})

describe('pastGaugeWords(input, unit)', () => {
  it('says what was measured and gives no advice', () => {
    expect(pastGaugeWords({ ...input, meanUm: 98 }, 'mm')).toEqual({
      headline: '0.150 mm on the bench, 0.098 mm mounted',
      detail: 'The window was 0.090 to 0.105 mm.',
      tone: 'plain',
    })
  })
  it('says what was not read, and that no window is known', () => {
    expect(pastGaugeWords({ ...input, benchUm: null }, 'mm')).toMatchObject({
      headline: 'not read on the bench, not read mounted',
      detail: 'No window is known.',
    })
  })
})
