import { describe, expect, it } from 'vitest'
import { deviceSentence, othersSentence, sizeText, waitSentence } from './device-words.ts'

describe('the sentence of the device', () => {
  it('tells what waits and what needs the person, and nothing else', () => {
    const item = (state: 'waiting' | 'refused') => ({ state })
    expect(deviceSentence([], false)).toBe('Everything that you wrote here is in the book.')
    expect(deviceSentence([item('waiting')], true)).toBe('1 record not sent yet. The service does not answer now.')
    expect(deviceSentence([item('waiting'), item('refused'), item('refused')], false)).toBe(
      '1 record not sent yet. 2 records refused: they need you.',
    )
  })

  it('says why an item waits', () => {
    expect(waitSentence({ behind: true, trouble: 'x' }, true)).toMatch(/before it at the same position/)
    expect(waitSentence({ behind: false, trouble: 'The service is not ready.' }, false)).toBe(
      'Tried: The service is not ready. It is tried again by itself.',
    )
    expect(waitSentence({ behind: false, trouble: null }, true)).toBe('Is sent when there is a network.')
  })

  it('says of somebody else the name and the count', () => {
    expect(othersSentence({ name: 'Mara', count: 2 })).toBe(
      'Mara has 2 records on this device that are not sent: Mara must sign in here to send them.',
    )
    expect(othersSentence({ name: 'Mara', count: 1 })).toBe(
      'Mara has 1 record on this device that is not sent: Mara must sign in here to send it.',
    )
  })

  it('gives sizes in kilobytes and megabytes', () => {
    expect([12, 1_499, 730_000, 1_250_000, 48_200_000].map(sizeText)).toEqual([
      '1 kB',
      '1 kB',
      '730 kB',
      '1.3 MB',
      '48 MB',
    ])
  })
})
