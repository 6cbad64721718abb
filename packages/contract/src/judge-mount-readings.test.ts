import { array, assert, boolean, constantFrom, integer, property, record } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bearing, position } from './a-22220.ts'
import { SiteSettings } from './access.ts'
import { bandOfPosition } from './band-of-position.ts'
import { judgementOf, type MountQuestion } from './judge-mount.ts'

const clearanceUm = integer({ min: 0, max: 200_000 }).map((nm) => nm / 1000)
const row = constantFrom('A' as const, 'B' as const)
const judgedReading = record({ moment: constantFrom('bench' as const, 'mounted' as const), row, clearanceUm })
const beside = record({ moment: constantFrom('found' as const, 'step' as const), row, clearanceUm, struck: boolean() })
const struck = judgedReading.map((reading) => ({ ...reading, struck: true }))
const method = constantFrom('feeler' as const, 'drive-up' as const, 'by-feel' as const)

function judged(over: Pick<MountQuestion, 'readings' | 'method'>) {
  const bands = bandOfPosition(position, bearing, null)
  return judgementOf({ bearing, bands, driveUpMm: 0.7, settings: SiteSettings.parse({}), ...over })
}

describe('the judgement of generated sheets', () => {
  it('is the same without the readings as found, those of the drive steps and the struck ones', () => {
    const sheet = record({
      method,
      counted: array(judgedReading, { maxLength: 12 }),
      others: array(beside),
      gone: array(struck),
    })
    assert(
      property(sheet, ({ method: by, counted, others, gone }) => {
        expect(judged({ method: by, readings: [...gone, ...others, ...counted] })).toEqual(
          judged({ method: by, readings: counted }),
        )
      }),
      { numRuns: 500 },
    )
  })

  it('does not hang on the order in which rows were read', () => {
    assert(
      property(array(judgedReading, { maxLength: 12 }), (readings) => {
        const byRow = readings.toSorted((a, b) => (a.row < b.row ? -1 : a.row > b.row ? 1 : 0))
        expect(judged({ method: 'feeler', readings: byRow }).verdict).toEqual(
          judged({ method: 'feeler', readings }).verdict,
        )
      }),
      { numRuns: 300 },
    )
  })
})
