import { NewGreasePlan } from '@shaftbook/contract/grease-plans'
import { describe, expect, it } from 'vitest'
import { otherWays, startOfWay, wayBody, wayFaults, type OtherWay, type WayEntry } from './way-entry.ts'

const id = '0175fcb3-2400-755a-b772-29f02550ba38'
const filled: Record<OtherWay, Partial<WayEntry>> = {
  refill: { greaseId: id, doseG: '125', months: '6' },
  'check-system': { days: '30' },
  'check-oil': { oil: 'Mineral, VG 220', days: '7' },
  'change-oil': { oil: 'Mineral, VG 220', months: '12', hours: '8000' },
  'turn-shaft': { days: '14' },
  sealed: { reason: 'Sealed type 2RS' },
}
const ways = Object.keys(otherWays) as OtherWay[]

describe('wayBody(id, positionId, way, entry)', () => {
  it.each(ways)('%s is a plan as the contract takes it, once its fields are filled', (way) => {
    const entry = { ...startOfWay(way, undefined), ...filled[way] }
    expect(wayFaults(way, entry)).toEqual({})
    expect(NewGreasePlan.safeParse(wayBody(id, id, way, entry)).success).toBe(true)
  })
  it('leaves out what was typed for another way', () => {
    const entry = { ...startOfWay('turn-shaft', undefined), greaseId: id, doseG: '12', months: '3', oil: 'VG 220' }
    expect(wayBody(id, id, 'turn-shaft', entry)).toMatchObject({
      greaseId: null,
      doseG: null,
      calendarMonths: null,
      oil: '',
      calendarDays: 14,
    })
  })
})

describe('wayFaults(way, entry)', () => {
  it('asks a refill for its grease, its amount and its months', () => {
    const entry = { ...startOfWay('refill', undefined), months: '' }
    expect(Object.keys(wayFaults('refill', entry)).toSorted((a, b) => a.localeCompare(b))).toEqual([
      'doseG',
      'greaseId',
      'months',
    ])
  })
  it('asks a check for one limit, whichever', () => {
    const entry = { ...startOfWay('check-oil', undefined), days: '' }
    expect(wayFaults('check-oil', entry)).toHaveProperty('days')
    expect(wayFaults('check-oil', { ...entry, hours: '500' })).toEqual({})
  })
  it.each(['0', '7.5', '1001', 'weekly'])('refuses "%s" as the days of turning', (days) => {
    expect(wayFaults('turn-shaft', { ...startOfWay('turn-shaft', undefined), days })).toHaveProperty('days')
  })
  it('asks how one knows that a bearing is sealed for life', () => {
    expect(wayFaults('sealed', startOfWay('sealed', undefined))).toHaveProperty('reason')
  })
})
