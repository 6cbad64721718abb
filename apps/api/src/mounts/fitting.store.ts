import type { BandBearing, BandChart, BandPosition } from '@shaftbook/contract/band-of-position'
import type { MountedBearing } from '@shaftbook/contract/mounts'
import { v7 as uuidv7 } from 'uuid'
import type { z } from 'zod'
import type { SiteTx, Sql } from '../db/database.ts'
import { umFromNm } from '../db/units.ts'
import { presentChartRow, type StoredChartRow } from '../register/charts.store.ts'

export interface FittingType extends BandBearing {
  readonly designation: string
  readonly basicCode: string
}

/** What a position asks for, and the type of the bearing that goes on. */
export interface Fitting {
  readonly position: BandPosition
  readonly chart: BandChart | null
  readonly planned: FittingType
  readonly type: FittingType | null
}

type InNm<T> = { [Key in keyof T as Key extends `${infer Name}Um` ? `${Name}Nm` : Key]: T[Key] }

interface FittingRow extends InNm<BandPosition> {
  readonly chart: Omit<BandChart, 'rows'> | null
  readonly chartRows: readonly StoredChartRow[] | null
  readonly planned: FittingType
  readonly type: FittingType | null
}

function typeJson(table: string): string {
  return `jsonb_build_object('designation', ${table}.designation, 'basicCode', ${table}.basic_code, 'kind', ${table}.kind, 'series', ${table}.series,
    'boreMm', ${table}.bore_mm, 'taper', ${table}.taper, 'clearanceClass', ${table}.clearance_class)`
}

const fittingColumns = `p.seat, p.own_reduction_min_nm as "ownReductionMinNm", p.own_reduction_max_nm as "ownReductionMaxNm",
  p.own_residual_min_nm as "ownResidualMinNm", p.own_band_source as "ownBandSource",
  case when c.id is null then null
    else jsonb_build_object('maker', c.maker, 'document', c.document, 'edition', c.edition, 'page', c.page) end as chart,
  (select jsonb_agg(jsonb_build_object('overMm', r.over_mm, 'inclMm', r.incl_mm, 'taper', r.taper,
      'clearanceClass', r.clearance_class, 'reductionMinNm', r.reduction_min_nm, 'reductionMaxNm', r.reduction_max_nm,
      'residualMinCnNm', r.residual_min_cn_nm, 'residualMinC3Nm', r.residual_min_c3_nm,
      'residualMinC4Nm', r.residual_min_c4_nm, 'driveUpMinMm', r.drive_up_min_mm, 'driveUpMaxMm', r.drive_up_max_mm)
      order by r.over_mm)
    from maker_chart_row r where r.site_id = c.site_id and r.chart_id = c.id) as "chartRows",
  ${typeJson('planned')} as planned, case when t.id is null then null else ${typeJson('t')} end as type`

/** `type` is the bearing type that goes on, as the statement names it. */
function fittingTables(type: string): string {
  return `position p
     join bearing_type planned on planned.site_id = p.site_id and planned.id = p.bearing_type_id
     left join bearing_type t on t.site_id = p.site_id and t.id = ${type}
     left join maker_chart c on c.site_id = p.site_id and c.id = p.maker_chart_id`
}

/** A position's seat and own band, its maker's chart and the bearing types. One statement. */
export async function findFitting(
  tx: Pick<SiteTx, 'scope' | 'sql'>,
  positionId: string,
  bearingTypeId: string,
): Promise<Fitting> {
  const [row] = await tx.sql<FittingRow>(
    `select ${fittingColumns} from ${fittingTables('$3::uuid')} where p.site_id = $1::uuid and p.id = $2::uuid`,
    [tx.scope.siteId, positionId, bearingTypeId],
  )
  if (!row) throw new Error(`position ${positionId} is not there`)
  return presentFitting(row)
}

/** What many positions ask for, by position; the type that goes on is the planned one. One statement. */
export async function plannedFittings(
  sql: Sql,
  siteId: string,
  positionIds: readonly string[],
): Promise<Map<string, Fitting>> {
  const rows = await sql<FittingRow & { id: string }>(
    `select p.id, ${fittingColumns} from ${fittingTables('p.bearing_type_id')}
     where p.site_id = $1::uuid and p.id = any($2::uuid[])`,
    [siteId, positionIds],
  )
  return new Map(rows.map((row) => [row.id, presentFitting(row)]))
}

function presentFitting(row: FittingRow): Fitting {
  const { chart, chartRows, planned, type } = row
  return {
    position: {
      seat: row.seat,
      ownReductionMinUm: umFromNm(row.ownReductionMinNm),
      ownReductionMaxUm: umFromNm(row.ownReductionMaxNm),
      ownResidualMinUm: umFromNm(row.ownResidualMinNm),
      ownBandSource: row.ownBandSource,
    },
    chart: chart && { ...chart, rows: (chartRows ?? []).map((chartRow) => presentChartRow(chartRow)) },
    planned,
    type,
  }
}

/** A bearing that is registered already, and where it is now. */
export interface KnownBearing {
  readonly bearingTypeId: string
  readonly designation: string
  readonly everFitted: boolean
  readonly fittedAt: { readonly positionId: string; readonly tag: string } | null
}

export async function findBearing(tx: SiteTx, id: string): Promise<KnownBearing | undefined> {
  const [bearing] = await tx.sql<KnownBearing>(
    `select b.bearing_type_id as "bearingTypeId", t.designation,
       exists (select from fitment f where f.site_id = b.site_id and f.bearing_id = b.id) as "everFitted",
       case when p.id is null then null else jsonb_build_object('positionId', p.id, 'tag', p.tag) end as "fittedAt"
     from bearing b
     join bearing_type t on t.site_id = b.site_id and t.id = b.bearing_type_id
     left join fitment f on f.site_id = b.site_id and f.bearing_id = b.id and f.removed_at is null
     left join position p on p.site_id = f.site_id and p.id = f.position_id
     where b.site_id = $1::uuid and b.id = $2::uuid`,
    [tx.scope.siteId, id],
  )
  return bearing
}

type Bearing = z.output<typeof MountedBearing>

export async function addBearing(tx: SiteTx, bearing: Bearing): Promise<void> {
  const { packedOn, ...rest } = bearing
  const data = { siteId: tx.scope.siteId, ...rest, packedOn: packedOn === null ? null : new Date(packedOn) }
  await tx.prisma.bearing.create({ data })
}

/** Fills or changes what is known of a bearing; what is left out stays. */
export async function describeBearing(tx: SiteTx, { id, serial, lot, maker, packedOn }: Bearing): Promise<void> {
  const { siteId } = tx.scope
  const data = {
    serial: serial ?? undefined,
    lot: lot ?? undefined,
    maker: maker ?? undefined,
    packedOn: packedOn === null ? undefined : new Date(packedOn),
  }
  if (Object.values(data).every((value) => value === undefined)) return
  await tx.prisma.bearing.update({ where: { siteId_id: { siteId, id } }, data })
}

export interface NewFitment {
  readonly positionId: string
  readonly bearingId: string
  readonly fittedAt: Date
  readonly startRunHours: number | null
  readonly mountRecordId: string
}

/** Opens a bearing's stay. A bearing that ran elsewhere before enters with the hours that it has. */
export async function openFitment(tx: SiteTx, fitment: NewFitment): Promise<string> {
  const id = uuidv7()
  const { positionId, bearingId, fittedAt, startRunHours, mountRecordId } = fitment
  await tx.sql(
    `insert into fitment (site_id, id, position_id, bearing_id, fitted_at, start_run_hours, mount_record_id, entry_age_hours)
     select $1::uuid, $2::uuid, $3::uuid, $4::uuid, $5::timestamptz, $6::float8, $7::uuid, coalesce((
       select max(f.entry_age_hours + coalesce(f.run_hours, 0)) from fitment f
       where f.site_id = $1::uuid and f.bearing_id = $4::uuid), 0)`,
    [tx.scope.siteId, id, positionId, bearingId, fittedAt, startRunHours, mountRecordId],
  )
  return id
}

export interface CorrectedStay {
  readonly fittedAt: Date
  readonly removedAt: Date | null
  readonly startRunHours: number | null
  readonly endRunHours: number | null
}

export async function findStay(tx: SiteTx, id: string): Promise<CorrectedStay> {
  const { siteId } = tx.scope
  return await tx.prisma.fitment.findUniqueOrThrow({
    where: { siteId_id: { siteId, id } },
    select: { fittedAt: true, removedAt: true, startRunHours: true, endRunHours: true },
  })
}

/** The stay that ended when the next bearing was mounted at the same position. */
export async function findStayBefore(tx: SiteTx, positionId: string, removedAt: Date) {
  return await tx.prisma.fitment.findFirst({
    where: { siteId: tx.scope.siteId, positionId, removedAt },
    select: { id: true, fittedAt: true, startRunHours: true },
  })
}

export interface StayChange {
  readonly mountRecordId?: string
  readonly fittedAt?: Date
  readonly startRunHours?: number | null
  readonly endRunHours?: number | null
  readonly runHours?: number
  readonly hoursSource?: string
}

/** Lets a stay follow a corrected mount. */
export async function correctStay(tx: SiteTx, id: string, change: StayChange): Promise<void> {
  const { siteId } = tx.scope
  await tx.prisma.fitment.update({ where: { siteId_id: { siteId, id } }, data: { ...change } })
}
