import type { DueItem } from '@shaftbook/contract/greasing'
import { describe, expect, it } from 'vitest'
import { dueDistance, dueReason } from './due-words.ts'

const item: DueItem = {
  planId: '0175fcb3-2400-755a-b772-29f02550ba38',
  positionId: '0175fcb3-2400-755a-b772-29f02550ba38',
  tag: 'BE12-HD-A',
  positionName: 'Drive side',
  machineName: 'Elevator 12',
  areaId: '0175fcb3-2400-755a-b772-29f02550ba38',
  areaName: 'Tower',
  task: 'regrease',
  way: 'gun',
  oil: '',
  calendarDays: null,
  greaseId: '0175fcb3-2400-755a-b772-29f02550ba38',
  greaseName: 'Skerry WR 2',
  doseG: 42,
  entry: 'side',
  intervalHours: 2000,
  calendarMonths: 12,
  lastGreasedAt: '2026-01-10T08:00:00Z',
  dueOn: '2026-05-01',
  dueRunHours: 12_000,
  dueBy: 'hours',
  estimated: false,
  state: 'overdue',
  meterLastTotalHours: 12_345,
}

describe('dueDistance(item, today)', () => {
  it('counts run hours where they decide and the meter was read', () => {
    expect(dueDistance(item, '2026-05-20')).toBe('345 run hours late')
  })
  it('counts days where the calendar decides or nobody read the meter', () => {
    expect(dueDistance({ ...item, dueBy: 'calendar' }, '2026-05-20')).toBe('19 days late')
    expect(dueDistance({ ...item, meterLastTotalHours: null }, '2026-05-02')).toBe('1 day late')
    expect(dueDistance({ ...item, dueBy: 'calendar', state: 'not-due' }, '2026-04-01')).toBe('in 30 days')
    expect(dueDistance({ ...item, dueBy: 'calendar', state: 'due' }, '2026-05-01')).toBe('due today')
    expect(dueDistance({ ...item, dueBy: 'calendar', state: 'due' }, '2026-05-08')).toBe('due for 7 days')
  })
  it('says that nothing is recorded where a position never was greased', () => {
    expect(dueDistance({ ...item, state: 'never-greased', dueBy: 'never-greased' }, '2026-05-20')).toBe(
      'no greasing is recorded',
    )
  })
})

describe('dueReason(item)', () => {
  it('marks run hours that are estimated', () => {
    expect(dueReason({ ...item, estimated: true })).toMatch(/^at 12.000 run hours, estimated$/)
    expect(dueReason({ ...item, dueBy: 'calendar' })).toBe('by the calendar')
  })
})
