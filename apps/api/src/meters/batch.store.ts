import type { MeterLine } from '@shaftbook/contract/meter-readings'
import type { Sql, SiteTx } from '../db/database.ts'
import type { CountingReading } from './total-hours.ts'

/** A meter as a line may name it. */
export interface NamedMeter {
  readonly id: string
  readonly name: string
  readonly machineId: string
  readonly machineTag: string
}

/** The meters that any of these lines names, in one statement. */
export async function findNamedMeters(sql: Sql, siteId: string, lines: readonly MeterLine[]): Promise<NamedMeter[]> {
  const told = (text: string | undefined): string[] => (text === undefined ? [] : [text.toLowerCase()])
  return await sql<NamedMeter>(
    `select meter.id, meter.name, m.id as "machineId", m.tag as "machineTag"
     from meter join machine m on m.site_id = meter.site_id and m.id = meter.machine_id
     where meter.site_id = $1::uuid
       and (meter.id = any($2::uuid[]) or lower(m.tag) = any($3::text[]) or lower(meter.name) = any($4::text[]))`,
    [
      siteId,
      lines.flatMap(({ meterId }) => meterId ?? []),
      lines.flatMap(({ machineTag }) => told(machineTag)),
      lines.flatMap(({ meterName }) => told(meterName)),
    ],
  )
}

/** The readings of a meter that count from the one before a moment to the one after another, in their order. */
export async function readingsAround(tx: SiteTx, meterId: string, from: Date, until: Date): Promise<CountingReading[]> {
  const counts = 'not exists (select from meter_reading c where c.site_id = r.site_id and c.corrects_id = r.id)'
  const edge = (end: 'max' | 'min', condition: string, otherwise: string): string =>
    `coalesce((select ${end}(r.read_at) from meter_reading r
       where r.site_id = $1::uuid and r.meter_id = $2::uuid and r.read_at ${condition} and ${counts}), ${otherwise})`
  return await tx.sql<CountingReading>(
    `select r.id, r.kind, r.read_at as "readAt", r.shown_hours as "shownHours",
       r.new_meter_shows_hours as "newMeterShowsHours", r.total_hours as "totalHours"
     from meter_reading r
     where r.site_id = $1::uuid and r.meter_id = $2::uuid and ${counts}
       and r.read_at between ${edge('max', '<= $3::timestamptz', '$3::timestamptz')}
         and ${edge('min', '> $4::timestamptz', '$4::timestamptz')}
     order by r.read_at, r.created_at`,
    [tx.scope.siteId, meterId, from, until],
  )
}

export interface TakenLine {
  readonly id: string
  readonly kind: 'reading' | 'exchange'
  readonly readAt: Date
  readonly shownHours: number
  readonly newMeterShowsHours: number | null
  readonly totalHours: number
}

/** Adds readings of a meter and keeps its newest one beside it, in two statements. */
export async function addReadings(
  tx: SiteTx,
  meterId: string,
  readBy: string,
  lines: readonly TakenLine[],
): Promise<void> {
  const { siteId } = tx.scope
  await tx.sql(
    `insert into meter_reading (site_id, id, meter_id, kind, read_at, shown_hours, new_meter_shows_hours, total_hours, read_by)
     select $1::uuid, r.id, $2::uuid, r.kind, r."readAt", r."shownHours", r."newMeterShowsHours", r."totalHours", $3::uuid
     from jsonb_to_recordset($4::jsonb) as r(id uuid, kind text, "readAt" timestamptz, "shownHours" float8,
       "newMeterShowsHours" float8, "totalHours" float8)`,
    [siteId, meterId, readBy, JSON.stringify(lines)],
  )
  await tx.sql(
    `update meter set (last_read_at, last_total_hours) = (
       select r.read_at, r.total_hours from meter_reading r
       where r.site_id = meter.site_id and r.meter_id = meter.id
         and not exists (select from meter_reading c where c.site_id = r.site_id and c.corrects_id = r.id)
       order by r.read_at desc, r.created_at desc limit 1)
     where meter.site_id = $1::uuid and meter.id = $2::uuid`,
    [siteId, meterId],
  )
}

/** The machine's hours at readings that were taken before. */
export async function hoursOfReadings(tx: SiteTx, ids: readonly string[]): Promise<Map<string, number>> {
  const rows = await tx.sql<{ id: string; hours: number }>(
    'select id, total_hours as hours from meter_reading where site_id = $1::uuid and id = any($2::uuid[])',
    [tx.scope.siteId, ids],
  )
  return new Map(rows.map(({ id, hours }) => [id, hours]))
}
