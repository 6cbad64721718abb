import { describe, expect, it } from 'vitest'
import { digestSentence, hourWords, sameEntry, toggled } from './digest-entry.ts'

const digest = {
  weekdays: [1, 3],
  hour: 6,
  areaIds: ['a', 'b'],
  alsoWhenNothing: false,
  to: 'mara@alpha.example',
  lastSentOn: null,
  problem: null,
  mailReady: true,
}

it('toggled(values, value) takes a value in and out', () => {
  expect(toggled([1, 3], 5)).toEqual([1, 3, 5])
  expect(toggled([1, 3, 5], 3)).toEqual([1, 5])
})

describe('sameEntry(a, b)', () => {
  it('does not mind the order of days and areas', () => {
    expect(sameEntry(digest, { ...digest, weekdays: [3, 1], areaIds: ['b', 'a'] })).toBe(true)
  })

  it.each([{ weekdays: [1] }, { hour: 7 }, { areaIds: ['a'] }, { alsoWhenNothing: true }])(
    'sees the change to %j',
    (change) => {
      expect(sameEntry(digest, { ...digest, ...change })).toBe(false)
    },
  )
})

it('hourWords(hour) writes the hour as a clock does', () => {
  expect([0, 6, 23].map(hourWords)).toEqual(['00:00', '06:00', '23:00'])
})

it('digestSentence(digest) says where mails go, or that none comes, and when the last one was', () => {
  expect(digestSentence(digest)).toBe('Mails go to mara@alpha.example.')
  expect(digestSentence({ ...digest, weekdays: [] })).toMatch(/^You get no mail/)
  expect(digestSentence({ ...digest, lastSentOn: '2026-11-25' })).toMatch(/25 Nov 2026\.$/)
})
