import { describe, expect, it } from 'vitest'
import { doseRemarks, entryBody, entryFaults, type GreasingEntry } from './greasing-entry.ts'

const entry: GreasingEntry = {
  greasedAt: '2026-07-01T09:30',
  greaseId: '',
  doseG: '12,5',
  meterShowsHours: '',
  finding: '',
  note: ' outlet open ',
}
const about = {
  task: 'regrease',
  timeZone: 'Europe/Berlin',
  now: new Date('2026-07-01T08:00:00Z'),
  needsGrease: false,
} as const

describe('entryFaults(entry, about)', () => {
  it('finds nothing wrong with a dose with a comma, now', () => expect(entryFaults(entry, about)).toEqual({}))
  it('refuses a time that lies in the future by the clock of the plant', () => {
    expect(entryFaults({ ...entry, greasedAt: '2026-07-01T10:30' }, about)).toHaveProperty('greasedAt')
  })
  it.each(['', '0', '30000', 'some'])('refuses the dose "%s"', (doseG) => {
    expect(entryFaults({ ...entry, doseG }, about)).toHaveProperty('doseG')
  })
  it('asks for the grease where there is no plan', () => {
    expect(entryFaults(entry, { ...about, needsGrease: true })).toHaveProperty('greaseId')
  })
  it('wants no dose of a check, but how it stands; its correction has that in the note', () => {
    const check = { ...entry, doseG: '' }
    expect(entryFaults(check, { ...about, task: 'check-oil' })).toEqual({ finding: 'Say how it stands.' })
    expect(entryFaults({ ...check, finding: 'Level is right' }, { ...about, task: 'check-oil' })).toEqual({})
    expect(entryFaults(check, { ...about, task: 'check-oil', corrects: true })).toEqual({})
    expect(entryFaults(check, { ...about, task: 'turn-shaft' })).toEqual({})
  })
  it('wants the amount of a refill', () => {
    expect(entryFaults({ ...entry, doseG: '' }, { ...about, task: 'refill' })).toHaveProperty('doseG')
  })
})

describe('entryBody(entry, about)', () => {
  it('sends the instant, the number and no meter reading where none was typed', () => {
    expect(entryBody(entry, about)).toEqual({
      greasedAt: '2026-07-01T07:30:00.000Z',
      greaseId: null,
      doseG: 12.5,
      meterShowsHours: null,
      note: 'outlet open',
    })
  })
  it('sends a check without dose or grease, its finding before the note', () => {
    const check = { ...entry, greaseId: 'g', finding: 'Low, topped up', note: '0.2 l' }
    expect(entryBody(check, { ...about, task: 'check-oil' })).toMatchObject({
      greaseId: null,
      doseG: null,
      note: 'Low, topped up. 0.2 l',
    })
  })
})

describe('doseRemarks(text, plannedG)', () => {
  it('asks about a dose of more than one and a half times the plan or less than 70 % of it', () => {
    expect(doseRemarks('15', 10)).toEqual([])
    expect(doseRemarks('15.1', 10)).toHaveLength(1)
    expect(doseRemarks('6.9', 10)).toHaveLength(1)
  })
  it('says nothing while no dose is typed', () => expect(doseRemarks('', 10)).toEqual([]))
})
