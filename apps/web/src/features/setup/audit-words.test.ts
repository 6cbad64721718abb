import { describe, expect, it } from 'vitest'
import { fieldChanges } from './audit-words.ts'

describe('fieldChanges(before, after)', () => {
  it('lists what differs, without keys, counters and clocks', () => {
    const before = { id: 'a', version: 1, updated_at: 'x', name: 'Belt 1', walking_order: 10, standby: false }
    const after = { id: 'a', version: 2, updated_at: 'y', name: 'Belt 1', walking_order: 20, standby: true }
    expect(fieldChanges(before, after)).toEqual([
      { field: 'walking order', before: '10', after: '20' },
      { field: 'standby', before: 'no', after: 'yes' },
    ])
  })
  it('lists what a new row says, and leaves out what it does not say', () => {
    expect(fieldChanges(null, { id: 'a', tag: 'BE-07', housing_code: null })).toEqual([
      { field: 'tag', before: null, after: 'BE-07' },
    ])
  })
  it('writes moments to the minute and records by the end of their id', () => {
    const after = { fitted_at: '2023-07-03T22:57:50.691+00:00', bearing_id: '01a20fc7-a01e-70fe-90b0-287fd282c2ee' }
    expect(fieldChanges(null, after).map((change) => change.after)).toEqual(['2023-07-03 22:57 UTC', 'record …82c2ee'])
  })
  it('shows a setting inside a record', () => {
    expect(
      fieldChanges({ settings: { greasingWindowPercent: 7 } }, { settings: { greasingWindowPercent: 14 } }),
    ).toEqual([{ field: 'settings', before: '{"greasingWindowPercent":7}', after: '{"greasingWindowPercent":14}' }])
  })
})
