import type { Fitment } from '@shaftbook/contract/position-views'
import { expect, test } from 'vitest'
import { lifeFitments } from './life-fitments.ts'

const ended: Fitment = {
  id: 'a',
  positionId: 'p',
  bearingId: 'b1',
  designation: '22220 K/C3',
  serial: null,
  fittedAt: '2021-03-01T08:00:00.000Z',
  removedAt: '2023-05-10T08:00:00.000Z',
  runHours: 6000,
  hoursSource: 'meter',
  entryAgeHours: 500,
  mountRecordId: null,
  verdict: 'over',
  residual: null,
  reductionUm: 70,
  removalId: 'r',
  endKind: 'failed',
  modeClause: '5.1.2',
  modeTerm: 'Subsurface initiated fatigue',
  cause: null,
}
const running: Fitment = {
  ...ended,
  id: 'b',
  serial: 'TB-1',
  fittedAt: '2023-05-10T08:00:00.000Z',
  removedAt: null,
  runHours: null,
  verdict: null,
  endKind: null,
  modeClause: null,
  modeTerm: null,
}
const greasing = (greasedAt: string) => ({ id: greasedAt, greasedAt, doseG: 40, windowResult: 'met' as const })

test('stays come oldest first, whichever way the service lists them', () => {
  expect(lifeFitments({ fitments: [running, ended], greasings: [] }, null).map(({ id }) => id)).toEqual(['a', 'b'])
})

test('a greasing belongs to the bearing that was in at that moment; at the change it belongs to the new one', () => {
  const greasings = ['2021-03-01T08:00:00.000Z', '2023-05-10T08:00:00.000Z', '2024-01-01T00:00:00.000Z'].map(greasing)
  const [first, second] = lifeFitments({ fitments: [ended, running], greasings }, null)
  expect(first?.greasedOn).toEqual(['2021-03-01T08:00:00.000Z'])
  expect(second?.greasedOn).toEqual(['2023-05-10T08:00:00.000Z', '2024-01-01T00:00:00.000Z'])
})

test('a life counts the hours that the bearing brought with it', () => {
  expect(lifeFitments({ fitments: [ended], greasings: [] }, null)[0]).toMatchObject({
    runHours: 6500,
    runHoursEstimated: false,
    end: 'failed',
    mode: 'subsurface initiated fatigue (5.1.2)',
  })
})

test('the bearing that still runs shows its hours so far and names its serial', () => {
  const [only] = lifeFitments({ fitments: [running], greasings: [] }, { hours: 1200, source: 'estimate' })
  expect(only).toMatchObject({ bearing: '22220 K/C3, no. TB-1', runHours: 1200, runHoursEstimated: true })
  expect(only?.end).toBeUndefined()
})

test('hours that nobody knows stay unknown', () => {
  const unknown = { ...ended, runHours: null, hoursSource: 'none' as const }
  expect(lifeFitments({ fitments: [unknown], greasings: [] }, null)[0]?.runHours).toBeUndefined()
})

test('a failure without a mode says that it was not found out', () => {
  const unseen = { ...ended, modeClause: null, modeTerm: null }
  expect(lifeFitments({ fitments: [unseen], greasings: [] }, null)[0]?.mode).toBe('mode not found out')
})
