import { NewObservation } from '@shaftbook/contract/observations'
import { describe, expect, it } from 'vitest'
import { nothingSeen, seenBody, seenFaults } from './seen-entry.ts'

const id = '0175fcb3-2400-755a-b772-29f02550ba38'
const about = { id, positionId: id, greasingId: id, observedAt: '2026-07-01T06:00:00.000Z' }

describe('seenBody(entry, about)', () => {
  it('is none where nothing was noticed', () => expect(seenBody(nothingSeen, about)).toBeNull())
  it.each([
    [{ temperatureC: '68,5' }, { temperatureC: 68.5, vibrationMmS: null, zone: null }],
    [
      { vibrationMmS: '4.2', zone: 'B' },
      { temperatureC: null, vibrationMmS: 4.2, zone: 'B' },
    ],
  ] as const)('of %o is an observation as the contract takes it', (part, wanted) => {
    const body = seenBody({ ...nothingSeen, ...part }, about)
    expect(body).toMatchObject(wanted)
    expect(NewObservation.safeParse(body).success).toBe(true)
  })
})

describe('seenFaults(entry)', () => {
  it('finds nothing wrong where nothing was noticed', () => expect(seenFaults(nothingSeen)).toEqual({}))
  it('refuses what no thermometer and no sensor reads', () => {
    const faults = seenFaults({ temperatureC: '300', vibrationMmS: '-1', zone: '' })
    expect(Object.keys(faults)).toEqual(['temperatureC', 'vibrationMmS'])
    expect(seenFaults({ ...nothingSeen, temperatureC: 'hot' })).toHaveProperty('temperatureC')
  })
})
