import { describe, expect, it } from 'vitest'
import { ownQuestion, readReading } from './sheet-readings.ts'

describe('ownQuestion({ answer }, unit)', () => {
  const question = (text: string) => ownQuestion({ answer: readReading(text, 'mm', 120) }, 'mm')
  it('offers 5.1 thou, 0.12954 mm, in place of 5.1 mm, which can’t stand', () => {
    expect(question('5.1')).toMatchObject({ refused: true })
    expect(question('5.1')?.offers.map(({ text }) => text)).toContain('0.12954')
  })
  it('asks whether 1.3 mm is meant, which may stand', () => expect(question('1.3')).toMatchObject({ refused: false }))
  it('has nothing to offer for a likely reading or for what is no number', () =>
    expect([question('0,13'), question('five')]).toEqual([null, null]))
})
