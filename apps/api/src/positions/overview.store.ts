import type { ChartRow, MakerChart } from '@shaftbook/bearing/band'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import type { Sql } from '../db/database.ts'
import { umFromNm } from '../db/units.ts'
import { present, selectJson, type StoredRow } from '../register/row.ts'
import type { Fields, RegisterTable } from '../register/table.ts'
import { areas, bearingTypes, machines, meters, positions, shafts } from '../register/tables.ts'

type Place = Pick<PositionOverview, 'position' | 'shaft' | 'machine' | 'area' | 'bearingType' | 'meter' | 'fittedType'>

interface PlaceRow {
  position: StoredRow
  shaft: StoredRow
  machine: StoredRow
  area: StoredRow
  bearing_type: StoredRow
  meter: StoredRow | null
  fitted_type: StoredRow | null
  last_read_at: Date | null
  last_total_hours: number | null
}

export async function positionExists(sql: Sql, id: string): Promise<boolean> {
  return (await sql<{ id: string }>('select id from position where id = $1::uuid', [id])).length > 0
}

/** The position with all that it hangs on, in one statement. */
export async function findPlace(sql: Sql, id: string): Promise<Place | undefined> {
  const [row] = await sql<PlaceRow>(
    `select ${selectJson(positions, 'p')} as position, ${selectJson(shafts, 's')} as shaft,
       ${selectJson(machines, 'm')} as machine, ${selectJson(areas, 'a')} as area,
       ${selectJson(bearingTypes, 't')} as bearing_type, ${selectJson(bearingTypes, 'ft')} as fitted_type,
       ${selectJson(meters, 'h')} as meter, h.last_read_at, h.last_total_hours
     from position p
     join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
     join machine m on m.site_id = s.site_id and m.id = s.machine_id
     join area a on a.site_id = m.site_id and a.id = m.area_id
     join bearing_type t on t.site_id = p.site_id and t.id = p.bearing_type_id
     left join meter h on h.site_id = m.site_id and h.machine_id = m.id
     left join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
     left join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
     left join bearing_type ft on ft.site_id = b.site_id and ft.id = b.bearing_type_id
     where p.id = $1::uuid`,
    [id],
  )
  if (!row) return undefined
  const meter = shown(meters, row.meter) as Place['meter']
  return {
    position: shown(positions, row.position) as Place['position'],
    shaft: shown(shafts, row.shaft) as Place['shaft'],
    machine: shown(machines, row.machine) as Place['machine'],
    area: shown(areas, row.area) as Place['area'],
    bearingType: shown(bearingTypes, row.bearing_type) as Place['bearingType'],
    fittedType: shown(bearingTypes, row.fitted_type) as Place['fittedType'],
    meter: meter && {
      ...meter,
      lastReadAt: row.last_read_at?.toISOString() ?? null,
      lastTotalHours: row.last_total_hours,
    },
  }
}

function shown(table: RegisterTable, row: StoredRow | null): Fields | null {
  return row && present(table, row)
}

interface ChartLine extends Omit<ChartRow, 'reductionMinUm' | 'reductionMaxUm' | 'residualMinUm'> {
  document: string
  edition: string
  taper: MakerChart['taper']
  minNm: number
  maxNm: number
  cnNm: number | null
  c3Nm: number | null
  c4Nm: number | null
}

/** The maker's chart by taper, as the band is chosen from it. */
export async function chartOf(sql: Sql, chartId: string | null): Promise<MakerChart[]> {
  const lines = await sql<ChartLine>(
    `select c.document, c.edition, r.taper, r.over_mm as "overMm", r.incl_mm as "inclMm", r.reduction_min_nm as "minNm",
       r.reduction_max_nm as "maxNm", r.residual_min_cn_nm as "cnNm", r.residual_min_c3_nm as "c3Nm",
       r.residual_min_c4_nm as "c4Nm", r.drive_up_min_mm as "driveUpMinMm", r.drive_up_max_mm as "driveUpMaxMm"
     from maker_chart c join maker_chart_row r on r.site_id = c.site_id and r.chart_id = c.id
     where c.id = $1::uuid order by r.taper, r.over_mm`,
    [chartId],
  )
  return [...Map.groupBy(lines, (line) => line.taper)].map(([taper, rows]) => {
    const { document: title, edition } = rows[0] as ChartLine
    return { title, edition, taper, rows: rows.map(chartRow) }
  })
}

function chartRow(line: ChartLine): ChartRow {
  return {
    overMm: line.overMm,
    inclMm: line.inclMm,
    reductionMinUm: umFromNm(line.minNm),
    reductionMaxUm: umFromNm(line.maxNm),
    driveUpMinMm: line.driveUpMinMm,
    driveUpMaxMm: line.driveUpMaxMm,
    residualMinUm: { CN: umFromNm(line.cnNm), C3: umFromNm(line.c3Nm), C4: umFromNm(line.c4Nm) },
  }
}

/** The current grease plan of a position and what it is due, in one statement. */
export async function greasingAt(sql: Sql, positionId: string): Promise<Pick<PositionOverview, 'plan' | 'due'>> {
  const [row] = await sql<Pick<PositionOverview, 'plan' | 'due'>>(
    `select
       jsonb_build_object('id', plan.id, 'version', plan.version, 'createdAt', plan.created_at, 'updatedAt', plan.updated_at,
         'positionId', plan.position_id, 'greaseId', plan.grease_id, 'entry', plan.entry, 'doseG', plan.dose_g,
         'intervalHours', plan.interval_hours, 'calendarMonths', plan.calendar_months, 'source', plan.source,
         'reason', plan.reason, 'duty', plan.duty, 'greaseName', grease.name, 'endedAt', plan.ended_at) as plan,
       case when d.id is null then null else jsonb_build_object('planId', d.id, 'positionId', d.position_id, 'tag', p.tag,
         'positionName', p.name, 'machineName', m.name, 'areaId', a.id, 'areaName', a.name, 'greaseId', plan.grease_id,
         'greaseName', grease.name, 'doseG', plan.dose_g, 'entry', plan.entry, 'intervalHours', plan.interval_hours,
         'calendarMonths', plan.calendar_months, 'lastGreasedAt', d.last_greased_at, 'dueOn', d.due_on,
         'dueRunHours', d.due_run_hours, 'dueBy', d.due_by, 'estimated', d.estimated, 'state', d.state,
         'meterLastTotalHours', h.last_total_hours) end as due
     from grease_plan plan
     join grease on grease.site_id = plan.site_id and grease.id = plan.grease_id
     join position p on p.site_id = plan.site_id and p.id = plan.position_id
     join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
     join machine m on m.site_id = s.site_id and m.id = s.machine_id
     join area a on a.site_id = m.site_id and a.id = m.area_id
     left join meter h on h.site_id = m.site_id and h.machine_id = m.id
     left join grease_due d on d.site_id = plan.site_id and d.id = plan.id
     where plan.position_id = $1::uuid and plan.ended_at is null`,
    [positionId],
  )
  return row ?? { plan: null, due: null }
}
