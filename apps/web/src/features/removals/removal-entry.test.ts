import { NewRemoval, RemovalCorrection } from '@shaftbook/contract/removals'
import { describe, expect, test } from 'vitest'
import {
  correctionBody,
  endQuestion,
  entryFaults,
  newEntry,
  newRemovalBody,
  type RemovalEntry,
} from './removal-entry.ts'

const now = new Date('2026-11-24T13:05:00Z')
const timeZone = 'Europe/Berlin'
const positionId = '0175fcb3-2400-7082-a266-3a9563ab1c35'
const about = { purpose: 'new' as const, hasMeter: true, timeZone, now, fittedAt: '2024-01-01T00:00:00.000Z' }
const blank = newEntry({ id: '01a2032b-9e80-7415-83f5-0762e27d5a39', personName: 'Mara Voss', now, timeZone })
const failed: RemovalEntry = {
  ...blank,
  endKind: 'failed',
  found: 'yes',
  modeClause: '5.3.2',
  meterShowsHours: '41280,5',
}

describe('a new entry', () => {
  test('starts at this minute by the clock of the plant, with the person who is signed in', () => {
    expect(blank).toMatchObject({ removedAt: '2026-11-24T14:05', observer: 'Mara Voss', endKind: '' })
  })

  test('is not signed without end kind and hours', () => {
    expect(Object.keys(entryFaults(blank, about)).sort()).toEqual(['endKind', 'meterShowsHours'])
  })
})

describe('faults', () => {
  test('a whole entry has none', () => {
    expect(entryFaults(failed, about)).toEqual({})
  })

  test('a failed bearing needs a mode, or that it was not found out', () => {
    expect(entryFaults({ ...failed, found: '' }, about).found).toBeDefined()
    expect(entryFaults({ ...failed, modeClause: null }, about).modeClause).toBeDefined()
    expect(entryFaults({ ...failed, modeClause: null, found: 'no' }, about)).toEqual({})
  })

  test('hours that are not read need a reason; where there is no meter nothing is asked', () => {
    const unread = { ...failed, meterShowsHours: '' }
    expect(entryFaults(unread, about).meterShowsHours).toBeDefined()
    expect(entryFaults({ ...unread, noHoursReason: 'Display broken' }, about)).toEqual({})
    expect(entryFaults(unread, { ...about, hasMeter: false })).toEqual({})
  })

  test('a text that is no number, or a number no meter shows, is refused', () => {
    expect(entryFaults({ ...failed, meterShowsHours: '41.280,5' }, about).meterShowsHours).toMatch(/number/)
    expect(entryFaults({ ...failed, meterShowsHours: '-1' }, about).meterShowsHours).toBeDefined()
  })

  test('a time in the future, before the mount, or none at all is refused', () => {
    expect(entryFaults({ ...failed, removedAt: '2026-11-24T14:07' }, about).removedAt).toMatch(/future/)
    expect(entryFaults({ ...failed, removedAt: '2023-12-31T10:00' }, about).removedAt).toMatch(/before/)
    expect(entryFaults({ ...failed, removedAt: '' }, about).removedAt).toBeDefined()
  })

  test('a correction asks for its reason, not for time and hours', () => {
    const correction = { ...failed, removedAt: '', meterShowsHours: '' }
    expect(Object.keys(entryFaults(correction, { ...about, purpose: 'correction' }))).toEqual(['correctionReason'])
  })
})

describe('bodies', () => {
  test('what is sent is what the contract takes, the plant time as an instant and the comma as a number', () => {
    const body = NewRemoval.parse(newRemovalBody(failed, positionId, about))
    expect(body).toMatchObject({
      removedAt: '2026-11-24T13:05:00.000Z',
      meterShowsHours: 41280.5,
      noHoursReason: null,
      modeClause: '5.3.2',
    })
  })

  test('it says which stay it was begun for, where that is known', () => {
    const begun = newEntry({
      id: failed.id,
      leavingFitmentId: '01a2032b-9e80-7415-83f5-0762e27d5a40',
      personName: 'Mara Voss',
      now,
      timeZone,
    })
    const typed = { ...failed, leavingFitmentId: begun.leavingFitmentId }
    expect(NewRemoval.parse(newRemovalBody(typed, positionId, about)).leavingFitmentId).toBe(begun.leavingFitmentId)
    expect(newRemovalBody(failed, positionId, about)).not.toHaveProperty('leavingFitmentId')
  })

  test('a mode that was chosen before the end kind changed is not sent', () => {
    expect(newRemovalBody({ ...failed, endKind: 'not-failed' }, positionId, about).modeClause).toBeNull()
    expect(newRemovalBody({ ...failed, found: 'no' }, positionId, about).modeClause).toBeNull()
  })

  test('without a meter the record says why it has no hours', () => {
    const body = newRemovalBody({ ...failed, meterShowsHours: '' }, positionId, { ...about, hasMeter: false })
    expect(NewRemoval.parse(body)).toMatchObject({
      meterShowsHours: null,
      noHoursReason: 'The machine has no hour meter',
    })
  })

  test('a correction is what the contract takes', () => {
    const body = RemovalCorrection.parse(correctionBody({ ...failed, correctionReason: ' Looked again ' }))
    expect(body).toMatchObject({ correctionReason: 'Looked again', endKind: 'failed' })
  })
})

describe('the question about the end kind', () => {
  test('a bearing taken out on a vibration alarm is asked about when it is called not failed', () => {
    expect(endQuestion({ endKind: 'not-failed', detection: 'vibration alarm' })).toMatch(/vibration alarm/)
  })

  test('a planned change, or one called failed, raises no question', () => {
    expect(endQuestion({ endKind: 'not-failed', detection: 'planned' })).toBeUndefined()
    expect(endQuestion({ endKind: 'failed', detection: 'vibration alarm' })).toBeUndefined()
  })
})
