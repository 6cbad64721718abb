import type { MeterReading } from '@shaftbook/contract/meter-readings'
import { v7 as uuidv7 } from 'uuid'
import type { Sql, SiteTx } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'
import type { CountingReading, Entry, Neighbours } from './total-hours.ts'

/** A reading counts until a further one corrects it. */
const counts = `not exists (select from meter_reading c where c.site_id = r.site_id and c.corrects_id = r.id)`
const columns = `r.id, r.meter_id as "meterId", r.kind, r.read_at as "readAt", r.shown_hours as "shownHours",
  r.new_meter_shows_hours as "newMeterShowsHours", r.total_hours as "totalHours", person.name as "readBy",
  r.corrects_id as "correctsId", r.correction_reason as "correctionReason"`
const tables = 'meter_reading r join person on person.id = r.read_by'

type ReadingRow = Omit<MeterReading, 'readAt'> & { readAt: Date }

function present({ readAt, ...row }: ReadingRow): MeterReading {
  return { ...row, readAt: readAt.toISOString() }
}

export async function listReadings(sql: Sql, siteId: string, query: PageQuery & { meterId?: string | undefined }) {
  const where = new Where()
    .add((value) => `r.site_id = ${value(siteId)}::uuid and ${counts}`)
    .addIf(query.meterId, (id) => `r.meter_id = ${id}::uuid`)
  const sort = { column: 'r.read_at', type: 'timestamptz', descending: true } as const
  const { rows, nextCursor } = await readPage<ReadingRow>(
    sql,
    { select: columns, from: tables, where, sort, id: 'r.id' },
    query,
  )
  return {
    items: rows.map((row) => present(row)),
    nextCursor,
  }
}

export async function findReading(tx: SiteTx, id: string): Promise<MeterReading | undefined> {
  const [row] = await tx.sql<ReadingRow>(
    `select ${columns} from ${tables} where r.site_id = $1::uuid and r.id = $2::uuid`,
    [tx.scope.siteId, id],
  )
  return row && present(row)
}

/** The machine of a meter with what its display does; held until the transaction ends. */
export async function holdMeter(
  tx: SiteTx,
  meterId: string,
): Promise<{ machineId: string; rolloverAtHours: number | null } | undefined> {
  const [meter] = await tx.sql<{ machineId: string; rolloverAtHours: number | null }>(
    `select m.id as "machineId", meter.rollover_at_hours as "rolloverAtHours"
     from meter join machine m on m.site_id = meter.site_id and m.id = meter.machine_id
     where meter.site_id = $1::uuid and meter.id = $2::uuid for no key update of m`,
    [tx.scope.siteId, meterId],
  )
  return meter
}

/** Whether a further reading corrects this one. */
export async function isCorrected(tx: SiteTx, id: string): Promise<boolean> {
  const rows = await tx.sql('select id from meter_reading where site_id = $1::uuid and corrects_id = $2::uuid', [
    tx.scope.siteId,
    id,
  ])
  return rows.length > 0
}

/** The readings that count next to a moment, without one that is about to be corrected. One statement. */
export async function findNeighbours(tx: SiteTx, meterId: string, at: Date, without?: string): Promise<Neighbours> {
  const side = (name: string, condition: string, direction: string): string =>
    `(select '${name}' as side, r.id, r.kind, r.read_at as "readAt", r.shown_hours as "shownHours",
        r.new_meter_shows_hours as "newMeterShowsHours", r.total_hours as "totalHours"
      from meter_reading r
      where r.site_id = $1::uuid and r.meter_id = $2::uuid and r.read_at ${condition} $3::timestamptz and ${counts}
        and ($4::uuid is null or r.id <> $4::uuid)
      order by r.read_at ${direction}, r.created_at ${direction} limit 1)`
  const rows = await tx.sql<CountingReading & { side: string }>(
    `${side('before', '<=', 'desc')} union all ${side('after', '>', 'asc')}`,
    [tx.scope.siteId, meterId, at, without ?? null],
  )
  return { before: rows.find((row) => row.side === 'before'), after: rows.find((row) => row.side === 'after') }
}

export interface NewReading extends Entry {
  readonly id?: string
  readonly meterId: string
  readonly kind: 'reading' | 'exchange'
  readonly totalHours: number
  readonly readBy: string
  readonly correctsId?: string
  readonly correctionReason?: string
}

/** Adds a reading and keeps the meter's newest one beside it. */
export async function addReading(tx: SiteTx, { id, ...reading }: NewReading): Promise<void> {
  await tx.prisma.meterReading.create({ data: { siteId: tx.scope.siteId, id: id ?? uuidv7(), ...reading } })
  await tx.sql(
    `update meter set (last_read_at, last_total_hours) = (
       select r.read_at, r.total_hours from meter_reading r
       where r.site_id = meter.site_id and r.meter_id = meter.id and ${counts}
       order by r.read_at desc, r.created_at desc limit 1)
     where meter.site_id = $1::uuid and meter.id = $2::uuid`,
    [tx.scope.siteId, reading.meterId],
  )
}

export interface MovedHours {
  readonly machineId: string
  readonly at: Date
  readonly wrongHours: number
  readonly hours: number
}

/** Lets the stays that began or ended with a reading follow its correction. */
export async function moveStays(tx: SiteTx, { machineId, at, wrongHours, hours }: MovedHours): Promise<void> {
  await tx.sql(
    `with moved as (
       select f.id,
         case when f.fitted_at = $3::timestamptz and f.start_run_hours = $4::float8 then $5::float8
           else f.start_run_hours end as start_hours,
         case when f.removed_at = $3::timestamptz and f.end_run_hours = $4::float8 then $5::float8
           else f.end_run_hours end as end_hours
       from fitment f
       join position p on p.site_id = f.site_id and p.id = f.position_id
       join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
       where f.site_id = $1::uuid and s.machine_id = $2::uuid and $3::timestamptz in (f.fitted_at, f.removed_at))
     update fitment f set start_run_hours = m.start_hours, end_run_hours = m.end_hours,
       run_hours = case when f.hours_source = 'meter' then m.end_hours - m.start_hours else f.run_hours end
     from moved m where f.site_id = $1::uuid and f.id = m.id`,
    [tx.scope.siteId, machineId, at, wrongHours, hours],
  )
}

/** The first and the last reading that count in the days before a moment: what a machine runs on average. */
export async function findUsageReadings(tx: SiteTx, meterId: string, from: Date, until: Date) {
  const rows = await tx.sql<{ readAt: Date; totalHours: number }>(
    `select r.read_at as "readAt", r.total_hours as "totalHours" from meter_reading r
     where r.site_id = $1::uuid and r.meter_id = $2::uuid and r.read_at between $3::timestamptz and $4::timestamptz and ${counts}
     order by r.read_at`,
    [tx.scope.siteId, meterId, from, until],
  )
  return { first: rows[0], last: rows.at(-1) }
}
