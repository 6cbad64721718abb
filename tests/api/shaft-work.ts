import { randomUUID } from 'node:crypto'
import type pg from 'pg'
import type { Test } from 'supertest'
import { expect } from 'vitest'
import { inSite } from '../../seeds/builders/in-site.ts'
import { insertRows, type RowOf, type TableName } from '../../seeds/builders/insert-rows.ts'
import { aGreasePlan, aPosition, type PositionRow } from '../../seeds/builders/position-rows.ts'
import { aMachine, aMeter, aMeterReading, aShaft, type MachineRow } from '../../seeds/builders/site-rows.ts'
import type { SmallSite } from '../../seeds/builders/small-site.ts'
import type { TestApp } from '../support/app.ts'

export const hour = 3_600_000
export const day = 24 * hour

/** A moment so many days after the meter of the site was read (1000 h, 90 days before the test), as it is sent. */
export function daysOn(site: SmallSite, days: number): string {
  return new Date(site.meterRead.at.getTime() + days * day).toISOString()
}

type Typed = string | { value: string; unit?: string; confirmed?: boolean }

/** Readings as they are typed, in mm unless said otherwise: by moment and row. */
export function typedReadings(rows: Partial<Record<'benchA' | 'benchB' | 'mountedA' | 'mountedB', Typed[]>>) {
  return Object.entries(rows).flatMap(([name, values]) =>
    values.map((typed) => {
      const { value, unit = 'mm', confirmed = false } = typeof typed === 'string' ? { value: typed } : typed
      const moment = name.startsWith('bench') ? 'bench' : 'mounted'
      return { moment, row: name.slice(-1), typedValue: value, typedUnit: unit, confirmed }
    }),
  )
}

/** Bench 125 µm, mounted 70 µm: a reduction of 55 µm, inside 45 to 60 µm, and 20 µm above the residual minimum of C3. */
export const insideReadings = typedReadings({
  benchA: ['0.13', '0.12'],
  benchB: ['0,125'],
  mountedA: ['0.070', '0.070'],
  mountedB: ['0,07'],
})
/** Bench 125 µm, mounted 62 µm: a reduction of 63 µm, over 60 µm. */
export const overReadings = typedReadings({
  benchA: ['0.125'],
  benchB: ['0.125'],
  mountedA: ['0.062'],
  mountedB: ['0.062'],
})

/** A machine of its own with a meter and one empty position, so that a test stands alone. */
export interface Spot {
  readonly positionId: string
  readonly tag: string
  readonly planId: string
  readonly machineId: string
  readonly meterId: string
}

/** Adds a spot at site alpha: the meter was read at 1000 h, the plan asks for 42 g every 2000 h or 12 months. */
export async function aSpot(
  { owner, alpha }: TestApp,
  over: {
    position?: Partial<PositionRow>
    machine?: Partial<MachineRow>
    rolloverAtHours?: number
    meter?: boolean
  } = {},
): Promise<Spot> {
  const { siteId, bearingTypeId, greaseId, meterRead } = alpha
  const machine = aMachine({ siteId, areaId: alpha.areaId, ...over.machine })
  const last = { lastReadAt: meterRead.at, lastTotalHours: meterRead.shownHours }
  const meter = aMeter({ siteId, machineId: machine.id, ...last, rolloverAtHours: over.rolloverAtHours ?? null })
  const read = { meterId: meter.id, readBy: alpha.people.technician.id, readAt: meterRead.at, shownHours: 1000 }
  const shaft = aShaft({ siteId, machineId: machine.id })
  const position = aPosition({ siteId, shaftId: shaft.id, bearingTypeId, ...over.position })
  const plan = aGreasePlan({ siteId, positionId: position.id, greaseId, createdAt: meterRead.at })
  await insert(owner, siteId, 'machine', [machine])
  if (over.meter !== false) {
    await insert(owner, siteId, 'meter', [meter])
    await insert(owner, siteId, 'meter_reading', [aMeterReading({ siteId, ...read })])
  }
  await insert(owner, siteId, 'shaft', [shaft])
  await insert(owner, siteId, 'position', [position])
  await insert(owner, siteId, 'grease_plan', [plan])
  return { positionId: position.id, tag: position.tag, planId: plan.id, machineId: machine.id, meterId: meter.id }
}

/** A signed mount of a new bearing, 80 days after the meter was read, inside its band. */
export function aMount(site: SmallSite, over: Record<string, unknown> = {}) {
  return {
    id: randomUUID(),
    positionId: site.locating.id,
    bearing: aBearing(site),
    mountedAt: daysOn(site, 80),
    fitter: 'Ada Brunn',
    reason: 'Planned change',
    meterShowsHours: 2500,
    readings: insideReadings,
    sign: true,
    ...over,
  }
}

export function aBearing(site: SmallSite, over: Record<string, unknown> = {}) {
  return { id: randomUUID(), bearingTypeId: site.bearingTypeId, ...over }
}

export const plannedRemoval = { endKind: 'not-failed', observer: 'Ada Brunn' }

/** The request is refused in this way, with a sentence for the person and the field at fault. */
export async function expectRefused(request: Test, status: number, code: string, path: string) {
  const reply = await request
  expect({ status: reply.status, code: reply.body.code }).toEqual({ status, code })
  expect(reply.headers['content-type']).toContain('application/problem+json')
  expect(reply.body.detail).toMatch(/\w+ \w+/)
  expect(reply.body.fields.map((field: { path: string }) => field.path)).toContain(path)
  for (const field of reply.body.fields) expect(field.message).toMatch(/\w+ \w+/)
  return reply.body as { detail: string; fields: { path: string; message: string; suggestions?: object[] }[] }
}

/** Inserts rows at a site, past the service. */
export async function insert<T extends TableName>(
  owner: pg.Client,
  siteId: string,
  table: T,
  rows: readonly RowOf[T][],
): Promise<void> {
  await inSite(owner, siteId, () => insertRows(owner, table, rows))
}

/** Asks the tables of a site, past the service. */
export async function ask<Row extends object>(
  owner: pg.Client,
  siteId: string,
  text: string,
  values: readonly unknown[] = [],
): Promise<Row[]> {
  return await inSite(owner, siteId, async () => (await owner.query<Row & pg.QueryResultRow>(text, [...values])).rows)
}

/** How many rows each table of a site has: equal before and after means that nothing was written. */
export async function rowCounts(owner: pg.Client, siteId: string): Promise<Record<string, number>> {
  return await inSite(owner, siteId, async () => {
    const { rows: tables } = await owner.query<{ name: string }>(
      "select relname as name from pg_class where relkind = 'r' and relrowsecurity and relnamespace = 'public'::regnamespace order by 1",
    )
    expect(tables.length).toBeGreaterThan(20)
    const counts = tables.map(({ name }) => `(select count(*)::int from "${name}") as "${name}"`)
    const { rows } = await owner.query<Record<string, number>>(`select ${counts.join(', ')}`)
    return rows[0] ?? {}
  })
}

/** Does something that is refused, and checks that no table of the site gained or lost a row. */
export async function expectNothingWritten(
  owner: pg.Client,
  siteId: string,
  work: () => Promise<unknown>,
): Promise<void> {
  const before = await rowCounts(owner, siteId)
  await work()
  expect(await rowCounts(owner, siteId)).toEqual(before)
}
