import type { MountPlan } from '@shaftbook/contract/mount-plans'
import { describe, expect, it } from 'vitest'
import { byDay, changesOf, dayWords, planFaults, typedPlan } from './plan-entry.ts'

const plan: MountPlan = {
  id: '01a20fc7-a01e-70fe-90b0-287fd282c2e1',
  version: 3,
  createdAt: '2026-11-20T08:00:00Z',
  updatedAt: '2026-11-20T08:00:00Z',
  positionId: '01a20fc7-a01e-70fe-90b0-287fd282c2e2',
  plannedFor: '2026-11-24',
  reason: 'Noise on the drive side',
  bearingTypeId: null,
  who: 'Day crew',
  note: '',
  tag: 'BC-01-HD-DS',
  machineName: 'Gallery belt',
  areaId: '01a20fc7-a01e-70fe-90b0-287fd282c2e3',
  areaName: 'Gallery',
  designation: '22220 K/C3',
  kitId: null,
  kitName: null,
  state: 'open',
  droppedReason: null,
  mountRecordId: null,
  plannedBy: 'Tomas Wren',
  endedAt: null,
}
const today = '2026-11-25'

describe('a typed plan', () => {
  it('is sent whole when it is new, with the type of the position for an empty bearing', () => {
    const typed = { ...typedPlan(undefined), plannedFor: '2026-12-01', reason: ' Noise ' }
    expect(changesOf(typed, undefined)).toEqual({
      plannedFor: '2026-12-01',
      reason: 'Noise',
      bearingTypeId: null,
      who: '',
      note: '',
    })
  })

  it('is sent by what differs when it is changed', () => {
    expect(changesOf(typedPlan(plan), plan)).toEqual({})
    expect(changesOf({ ...typedPlan(plan), who: '', bearingTypeId: plan.id }, plan)).toEqual({
      who: '',
      bearingTypeId: plan.id,
    })
  })

  it('needs a day that is not past, and a reason', () => {
    expect([...planFaults(typedPlan(undefined), undefined, today).keys()]).toEqual(['plannedFor', 'reason'])
    const past = { ...typedPlan(plan), plannedFor: '2026-11-23' }
    expect([...planFaults(past, undefined, today).keys()]).toEqual(['plannedFor'])
    expect(planFaults({ ...past, plannedFor: today }, undefined, today).size).toBe(0)
  })

  it('may keep the day that it had, though it has passed', () => {
    expect(planFaults(typedPlan(plan), plan, today).size).toBe(0)
  })
})

it('plans stand by their day, the nearest first', () => {
  const later = { ...plan, plannedFor: '2026-12-01' }
  expect(byDay([later, plan, plan]).map(({ day, plans }) => [day, plans.length])).toEqual([
    ['2026-11-24', 2],
    ['2026-12-01', 1],
  ])
})

it('a day is told from today', () => {
  expect(['2026-11-24', today, '2026-11-26'].map((day) => dayWords(day, today))).toEqual(['passed', 'today', ''])
})
