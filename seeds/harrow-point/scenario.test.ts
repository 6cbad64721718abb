import { nutByCode } from '@shaftbook/standards/lock-nuts'
import { sleeveByCode } from '@shaftbook/standards/adapter-sleeves'
import { failureModeByClause } from '@shaftbook/standards/failure-modes'
import { beforeAll, describe, expect, it } from 'vitest'
import type { FitmentRow } from '../builders/record-rows.ts'
import type { GreasingRow, PositionRow } from '../builders/position-rows.ts'
import { simulateTerminal, type Scenario } from './scenario.ts'
import { harrowPoint, sallowQuay } from './terminals.ts'

const msPerDay = 86_400_000

function grouped<T>(rows: readonly T[], key: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const row of rows) groups.set(key(row), [...(groups.get(key(row)) ?? []), row])
  return groups
}

/** Records that count: those that no further record corrects. */
function counting<T extends { id: string; correctsId: string | null }>(rows: readonly T[]): T[] {
  const corrected = new Set(rows.map(({ correctsId }) => correctsId))
  return rows.filter(({ id }) => !corrected.has(id))
}

function openFitments({ rows }: Scenario): FitmentRow[] {
  return rows.fitment.filter(({ removedAt }) => removedAt === null)
}

const longEnough = 60_000

describe('simulateTerminal', () => {
  it('gives the same rows for the same seed and day, and others for another seed', { timeout: longEnough }, () => {
    const text = (seed: string): string => JSON.stringify(simulateTerminal({ ...harrowPoint, seed }, '2026-11-24'))
    const first = text('wheat')
    // compared as a truth value: a difference of this size is not worth printing
    expect(text('wheat') === first).toBe(true)
    expect(text('rye') === first).toBe(false)
  })

  it('lets two sites share a person and nothing else', { timeout: longEnough }, () => {
    const small = simulateTerminal(sallowQuay, '2026-11-24')
    const large = simulateTerminal(harrowPoint, '2026-11-24')
    const ids = new Set(Object.values(small.rows).flatMap((rows) => rows.map(({ id }) => id)))
    const shared = Object.values(large.rows).flatMap((rows) => rows.filter(({ id }) => ids.has(id)))
    expect(shared).toEqual([])
    expect(small.people.filter(({ id }) => large.people.some((person) => person.id === id))).toHaveLength(1)
  })
})

describe.each(['2026-11-24', '2027-05-17', '2028-02-29'])('Harrow Point on %s', (today) => {
  let scenario: Scenario
  beforeAll(() => {
    scenario = simulateTerminal(harrowPoint, today)
  }, longEnough)

  it('has about 40 machines, 160 positions and six years behind it', () => {
    const { rows } = scenario
    expect(rows.machine.length).toBeGreaterThanOrEqual(38)
    expect(rows.machine.length).toBeLessThanOrEqual(44)
    expect(rows.position.length).toBeGreaterThanOrEqual(150)
    expect(rows.position.length).toBeLessThanOrEqual(170)
    const days = rows.meter_reading.map(({ readAt }) => (Date.parse(today) - readAt.getTime()) / msPerDay)
    expect(Math.max(...days)).toBeGreaterThan(6 * 365)
    const bores = rows.bearing_type.map(({ boreMm }) => boreMm)
    expect([Math.min(...bores), Math.max(...bores)]).toEqual([90, 180])
  })

  it('refers to nothing that is not there and uses no id twice', () => {
    const rows = Object.values(scenario.rows).flat()
    const ids = rows.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    const known = new Set([...ids, scenario.site.id, ...scenario.people.map(({ id }) => id)])
    const links = rows.flatMap((row) =>
      Object.entries(row).filter(([name, value]) => /(Id|By)$/.test(name) && typeof value === 'string'),
    )
    expect(links.filter(([, id]) => !known.has(id))).toEqual([])
  })

  it('writes nothing that lies on the day itself or after it', () => {
    const start = Date.parse(today)
    const late = Object.values(scenario.rows)
      .flat()
      .flatMap((row) => Object.entries(row).filter(([, value]) => value instanceof Date && value.getTime() >= start))
    expect(late).toEqual([])
  })

  it('lets a position carry one bearing at a time, and every position carry one at the end', () => {
    const byPosition = grouped(scenario.rows.fitment, ({ positionId }) => positionId)
    const end = (stay: FitmentRow): number => stay.removedAt?.getTime() ?? Number.POSITIVE_INFINITY
    const wrong = [...byPosition.values()].flatMap((stays) =>
      stays
        .sort((a, b) => a.fittedAt.getTime() - b.fittedAt.getTime())
        .filter((stay, index) => {
          const next = stays[index + 1]?.fittedAt.getTime() ?? Number.POSITIVE_INFINITY
          return end(stay) <= stay.fittedAt.getTime() || end(stay) > next
        }),
    )
    expect(wrong).toEqual([])
    const open = openFitments(scenario).map(({ positionId }) => positionId)
    expect(open.sort()).toEqual(scenario.rows.position.map(({ id }) => id).sort())
    expect(new Set(scenario.rows.fitment.map(({ bearingId }) => bearingId)).size).toBe(scenario.rows.fitment.length)
  })

  it('counts the run hours of an ended stay between its two readings, never below its age at entry', () => {
    const ended = scenario.rows.fitment.filter(({ removedAt }) => removedAt !== null)
    expect(ended.filter(({ runHours, entryAgeHours }) => !(Number(runHours) >= entryAgeHours))).toEqual([])
    const metered = ended.filter(({ startRunHours }) => startRunHours !== null)
    const counted = metered.map(({ startRunHours, endRunHours }) => Number(endRunHours) - Number(startRunHours))
    expect(metered.length).toBeGreaterThan(50)
    expect(metered.map(({ runHours }) => runHours)).toEqual(counted)
    expect(openFitments(scenario).filter(({ runHours }) => runHours !== null)).toEqual([])
  })

  it('lets no meter fall and keeps each meter’s newest reading with it', () => {
    const byMeter = grouped(scenario.rows.meter_reading, ({ meterId }) => meterId)
    for (const meter of scenario.rows.meter) {
      const readings = byMeter.get(meter.id) ?? []
      const totals = readings.map(({ totalHours }) => totalHours)
      const times = readings.map(({ readAt }) => readAt.getTime())
      expect(totals).toEqual(totals.toSorted((a, b) => a - b))
      expect(times).toEqual([...new Set(times)].sort((a, b) => a - b))
      // what the display shows lags behind the total by what was on it at the exchange
      let behind = 0
      const shown = readings.map(({ totalHours, newMeterShowsHours }) => {
        const display = totalHours - behind
        behind = newMeterShowsHours === null ? behind : totalHours - newMeterShowsHours
        return display
      })
      expect(readings.map(({ shownHours }) => shownHours)).toEqual(shown)
      expect([meter.lastReadAt, meter.lastTotalHours]).toEqual([readings.at(-1)?.readAt, readings.at(-1)?.totalHours])
    }
    expect(scenario.rows.meter_reading.filter(({ kind }) => kind === 'exchange')).toHaveLength(2)
  })

  it('gives every position a kit whose sleeve, nut and washer go together and with its bearing', () => {
    const { rows } = scenario
    const types = new Map(rows.bearing_type.map((type) => [type.id, type]))
    const parts = new Map(rows.part.map((part) => [part.id, part]))
    const lines = grouped(rows.kit_line, ({ kitId }) => kitId)
    for (const position of rows.position) {
      const kit = (lines.get(position.kitId ?? '') ?? []).map(({ partId }) => parts.get(partId))
      const named = (kind: string): string[] =>
        kit.filter((part) => part?.kind === kind).map((part) => part?.designation ?? '')
      const type = types.get(position.bearingTypeId)
      expect(named('bearing')).toEqual([type?.designation])
      expect(named('grease')).toHaveLength(1)
      if (position.seat !== 'adapter-sleeve') continue
      const sleeve = sleeveByCode(named('sleeve')[0] ?? '')
      const nut = nutByCode(named('nut')[0] ?? '')
      if (!sleeve.found || !nut.found) throw new Error(`${position.tag}: its sleeve or nut is not tabled`)
      expect(sleeve.row.bearingBoreMm).toBe(type?.boreMm)
      expect(sleeve.row.shaftMm).toBe(position.shaftDiameterMm)
      expect(nut.row.thread).toBe(sleeve.row.thread)
      expect(named('washer')).toEqual([nut.row.lockingCode])
      expect(named('ring').length > 0).toBe(position.locating && position.housingCode !== null)
    }
  })

  it('keeps verdicts that the readings bear out', () => {
    const { rows } = scenario
    const readings = grouped(rows.mount_reading, ({ mountRecordId }) => mountRecordId)
    const judged = rows.mount_record.filter(({ verdict }) => verdict !== null)
    expect(judged.length).toBeGreaterThan(250)
    for (const record of judged) {
      const mean = (moment: string, row: string): number => {
        const felt = (readings.get(record.id) ?? []).filter((r) => r.moment === moment && r.bearingRow === row)
        return felt.reduce((sum, { clearanceNm }) => sum + clearanceNm, 0) / felt.length
      }
      const benchNm = (mean('bench', 'A') + mean('bench', 'B')) / 2
      const mountedNm = (mean('mounted', 'A') + mean('mounted', 'B')) / 2
      const reductionNm = Number(record.reductionNm)
      // the two means are rounded to whole nanometres before they are subtracted
      expect(Math.abs(benchNm - mountedNm - reductionNm)).toBeLessThanOrEqual(1)
      const outside = reductionNm < Number(record.bandMinNm) ? 'under' : 'over'
      const inside = reductionNm >= Number(record.bandMinNm) && reductionNm <= Number(record.bandMaxNm)
      // this near to the limits of a band, no reading proves anything
      const fits = inside ? ['inside', 'not-proven'] : [outside]
      expect(fits).toContain(record.verdict)
      expect(record.judgement?.verdict).toBe(record.verdict)
    }
  })

  it('names failure modes of the standard, and none for a bearing that had not failed', () => {
    for (const { endKind, modeClause } of scenario.rows.removal) {
      if (modeClause === null) continue
      expect(endKind).toBe('failed')
      expect(failureModeByClause(modeClause).found).toBe(true)
    }
  })

  it('names the removal of every stay that has ended, and of no other', () => {
    const removals = new Map(scenario.rows.removal.map(({ id, fitmentId }) => [id, fitmentId]))
    const named = new Map(scenario.fitmentRecords.map(({ fitmentId, removalId }) => [fitmentId, removalId]))
    for (const { id, removedAt } of scenario.rows.fitment) {
      const stayThatEnded = removals.get(named.get(id) ?? '')
      expect(stayThatEnded).toBe(removedAt === null ? undefined : id)
    }
  })

  it('leaves a believable number of mounts and shafts in want of a person', () => {
    const recordOf = new Map(scenario.fitmentRecords.map(({ fitmentId, mountRecordId }) => [fitmentId, mountRecordId]))
    const records = new Map(scenario.rows.mount_record.map((record) => [record.id, record]))
    const present = openFitments(scenario).map(({ id }) => records.get(recordOf.get(id) ?? '') ?? null)
    expect(present.filter((record) => record === null)).toHaveLength(2)
    const outside = present.filter((record) => ['under', 'over', 'not-proven'].includes(record?.verdict ?? ''))
    expect(outside.length).toBeGreaterThanOrEqual(6)
    expect(outside.length).toBeLessThanOrEqual(10)
    expect(present.filter((record) => record?.residual === 'too-small')).toHaveLength(2)
    const byShaft = grouped(scenario.rows.position, ({ shaftId }) => shaftId)
    const wrong = scenario.rows.shaft.filter(({ id, locatingOverrideReason }) => {
      const locating = (byShaft.get(id) ?? []).filter((position) => position.locating).length
      return locating !== 1 && locatingOverrideReason === null
    })
    expect(wrong).toHaveLength(2)
  })

  it('leaves 15 to 25 positions overdue or never greased, and the others greased in time', () => {
    const states = scenario.rows.position.map((position) => partGone(scenario, position, today))
    expect(states.filter((part) => part === null)).toHaveLength(4)
    const overdue = states.filter((part) => part !== null && part > 1.1)
    expect(overdue.length).toBeGreaterThanOrEqual(11)
    expect(overdue.length).toBeLessThanOrEqual(21)
  })
})

/** Part of the greasing interval that has gone by, computed anew from the rows; null where nothing was greased. */
function partGone({ rows }: Scenario, position: PositionRow, today: string): number | null {
  const stay = rows.fitment.find(({ positionId, removedAt }) => positionId === position.id && removedAt === null)
  const plan = rows.grease_plan.find(({ positionId, task }) => positionId === position.id && task === 'regrease')
  const machine = rows.machine.find(({ id }) => id === rows.shaft.find(({ id }) => id === position.shaftId)?.machineId)
  const meter = rows.meter.find(({ machineId }) => machineId === machine?.id)
  // greased otherwise now, or not at all
  if (plan?.endedAt) return 0
  if (!stay || !plan || !machine) throw new Error(`${position.tag} is not whole`)
  const greasings = counting(rows.greasing.filter(({ positionId }) => positionId === position.id))
  const since = greasings.filter(({ greasedAt, withdrawn }) => greasedAt >= stay.fittedAt && !withdrawn)
  const last = since.reduce<GreasingRow | null>((a, b) => (a && a.greasedAt > b.greasedAt ? a : b), null)
  if (last === null) return null
  const days = (Date.parse(today) - last.greasedAt.getTime()) / msPerDay
  const metered = meter && last.runHours !== null ? (meter.lastTotalHours ?? 0) - last.runHours : null
  const hours = metered ?? days * machine.hoursPerDay
  return Math.max(hours / (plan.intervalHours ?? Infinity), days / ((plan.calendarMonths ?? Infinity) * 30.4))
}
