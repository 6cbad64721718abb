import { describe, expect, it } from 'vitest'
import { makeRandom } from '../random.ts'
import { simulateTerminal } from './scenario.ts'
import { drawLife } from './spot.ts'
import { harrowPoint } from './terminals.ts'
import { scaleHours, truth } from './truth.ts'

function median(values: number[]): number {
  return values.sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
}

describe('scaleHours', () => {
  it('follows the rating life of ISO 281', () => {
    // P/C 0.1: (10)^(10/3) = 2154.43 million revolutions; at 100 rev/min 359 072 h, 3.59072 times the reference
    expect(scaleHours('CL', 0.1, 100)).toBeCloseTo(truth.referenceHours * 3.59072 ** 0.3, 0)
  })

  it('is shorter for more load, more speed and a harder area', () => {
    const light = scaleHours('GA', 0.08, 100)
    expect(scaleHours('GA', 0.12, 100)).toBeLessThan(light)
    expect(scaleHours('GA', 0.08, 200)).toBeLessThan(light)
    expect(scaleHours('RP', 0.08, 100)).toBeLessThan(light)
  })
})

describe('drawLife', () => {
  it('lets a bearing outlive what it has used up', () => {
    const random = makeRandom('old')
    for (let drawn = 0; drawn < 1000; drawn++) expect(drawLife(random, 'unrecorded', 0.4)).toBeGreaterThan(0.4)
  })

  it('draws from the scale 1 for a new bearing', () => {
    const random = makeRandom('new')
    const lives = Array.from({ length: 10_000 }, () => drawLife(random, 'good', 0))
    expect(lives.filter((life) => life < 1).length / lives.length).toBeCloseTo(1 - 1 / Math.E, 1)
  })
})

describe('the records of Harrow Point', () => {
  it('show shorter lives after mounts outside the band than inside', { timeout: 60_000 }, () => {
    const lives: Record<'inside' | 'outside', number[]> = { inside: [], outside: [] }
    for (const seed of ['a', 'b', 'c']) {
      const { rows, fitmentRecords } = simulateTerminal({ ...harrowPoint, seed }, '2026-11-24')
      const stays = new Map(rows.fitment.map((stay) => [stay.id, stay]))
      const verdicts = new Map(rows.mount_record.map(({ id, verdict }) => [id, verdict]))
      const failed = new Set(rows.removal.filter(({ endKind }) => endKind === 'failed').map(({ id }) => id))
      for (const { fitmentId, mountRecordId, removalId } of fitmentRecords) {
        const verdict = verdicts.get(mountRecordId ?? '')
        const hours = stays.get(fitmentId)?.runHours
        if (!failed.has(removalId ?? '') || hours === null || hours === undefined) continue
        if (verdict === 'inside') lives.inside.push(hours)
        if (verdict === 'over' || verdict === 'under') lives.outside.push(hours)
      }
    }
    expect(lives.outside.length).toBeGreaterThan(30)
    expect(median(lives.outside)).toBeLessThan(0.75 * median(lives.inside))
  })
})
