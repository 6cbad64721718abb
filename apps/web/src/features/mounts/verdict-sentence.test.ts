import { describe, expect, it } from 'vitest'
import { verdictSentence } from './verdict-sentence.ts'

const band = { minUm: 45, maxUm: 60 }

describe('verdictSentence(judged, unit)', () => {
  it('says how much was taken out and how far that is beyond the band', () => {
    expect(verdictSentence({ verdict: 'over', reductionUm: 72, band }, 'mm')).toBe(
      '0.072 mm of clearance is taken out, 0.012 mm too much; the band is 0.045 to 0.060 mm.',
    )
    expect(verdictSentence({ verdict: 'under', reductionUm: 40, band }, 'um')).toBe(
      '40 µm of clearance is taken out, 5 µm too little; the band is 45 to 60 µm.',
    )
  })
  it('says that the gauge cannot tell when nothing is proven', () => {
    expect(verdictSentence({ verdict: 'not-proven', reductionUm: 46, band }, 'mm')).toContain('cannot tell')
  })
  it('has nothing to say where no reduction is known', () => {
    expect(verdictSentence({ verdict: 'not-proven', reductionUm: null, band }, 'mm')).toBeNull()
  })
  it('says that the clearance grew when it is larger than before', () => {
    expect(verdictSentence({ verdict: 'under', reductionUm: -10, band }, 'mm')).toBe(
      'The clearance grew by 0.010 mm instead of shrinking; the band is 0.045 to 0.060 mm.',
    )
  })
})
