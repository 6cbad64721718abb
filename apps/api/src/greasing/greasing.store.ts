import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import type { DueItem, Greasing } from '@shaftbook/contract/greasing'
import type { Sql, SiteTx } from '../db/database.ts'
import { contains, readPage, Where, type PageQuery } from '../db/list-page.ts'

/** A greasing counts until a further one corrects it, and unless it was withdrawn. */
const counts = `not g.withdrawn
  and not exists (select from greasing c where c.site_id = g.site_id and c.corrects_id = g.id)`
const columns = `g.id, g.position_id as "positionId", p.tag, g.plan_id as "planId", g.task, g.kind, g.greased_at as "greasedAt",
  g.run_hours as "runHours", g.grease_id as "greaseId", grease.name as "greaseName", g.dose_g as "doseG",
  g.planned_dose_g as "plannedDoseG", coalesce(w.window_result, 'no-window') as "windowResult", w.due_on::text as "dueOn", g.note, g.signed_at as "signedAt",
  person.name as "signedBy", g.corrects_id as "correctsId", g.correction_reason as "correctionReason", g.withdrawn`
const tables = `greasing g
  join position p on p.site_id = g.site_id and p.id = g.position_id
  left join grease on grease.site_id = g.site_id and grease.id = g.grease_id
  left join greasing_window w on w.site_id = g.site_id and w.id = g.id
  join person on person.id = g.signed_by`

type GreasingRow = Omit<Greasing, 'greasedAt' | 'signedAt'> & { greasedAt: Date; signedAt: Date }

function present({ greasedAt, signedAt, ...row }: GreasingRow): Greasing {
  return { ...row, greasedAt: greasedAt.toISOString(), signedAt: signedAt.toISOString() }
}

export interface GreasingQuery extends PageQuery {
  readonly positionId?: string | undefined
  readonly task?: string | undefined
  readonly windowResult?: string | undefined
}

export async function listGreasings(sql: Sql, siteId: string, query: GreasingQuery) {
  const where = new Where()
    .add((value) => `g.site_id = ${value(siteId)}::uuid and ${counts}`)
    .addIf(query.positionId, (id) => `g.position_id = ${id}::uuid`)
    .addIf(query.task, (task) => `g.task = ${task}`)
    .addIf(query.windowResult, (result) => `coalesce(w.window_result, 'no-window') = ${result}`)
  const sort = { column: 'g.greased_at', type: 'timestamptz', descending: true } as const
  const { rows, nextCursor } = await readPage<GreasingRow>(
    sql,
    { select: columns, from: tables, where, sort, id: 'g.id' },
    query,
  )
  return { items: rows.map((row) => present(row)), nextCursor }
}

export async function findGreasing(sql: Sql, siteId: string, id: string): Promise<Greasing | undefined> {
  const [row] = await sql<GreasingRow>(
    `select ${columns} from ${tables} where g.site_id = $1::uuid and g.id = $2::uuid`,
    [siteId, id],
  )
  return row && present(row)
}

/** Whether a further greasing corrects this one. */
export async function isCorrected(tx: SiteTx, id: string): Promise<boolean> {
  const rows = await tx.sql('select id from greasing where site_id = $1::uuid and corrects_id = $2::uuid', [
    tx.scope.siteId,
    id,
  ])
  return rows.length > 0
}

/** Since when the bearing that was in a position at a moment is fitted; null: nothing was fitted. */
export async function findFittedAt(tx: SiteTx, positionId: string, at: Date): Promise<Date | null> {
  const [row] = await tx.sql<{ fittedAt: Date }>(
    `select f.fitted_at as "fittedAt" from fitment f
     where f.site_id = $1::uuid and f.position_id = $2::uuid and f.fitted @> $3::timestamptz`,
    [tx.scope.siteId, positionId, at],
  )
  return row?.fittedAt ?? null
}

/** By which gun, and on which walk of a round, a greasing was done. */
export interface GreasedBy {
  readonly walkId?: string
  readonly stopId?: string
  readonly gunId?: string | null
  readonly strokes?: number | null
  readonly gramsPerStroke?: number | null
}

export interface NewGreasingRow extends GreasedBy {
  readonly id: string
  readonly positionId: string
  readonly planId: string | null
  readonly task: GreaseTask
  readonly kind: 'regreasing' | 'initial-fill' | null
  readonly greasedAt: Date
  readonly runHours: number | null
  readonly hoursSource: 'meter' | 'estimate' | 'none'
  readonly greaseId: string | null
  readonly doseG: number | null
  readonly plannedDoseG: number | null
  readonly note: string
  readonly signedAt: Date
  readonly signedBy: string
  readonly correctsId?: string
  readonly correctionReason?: string
  readonly withdrawn?: boolean
}

export async function addGreasing(tx: SiteTx, row: NewGreasingRow): Promise<void> {
  await tx.prisma.greasing.create({ data: { siteId: tx.scope.siteId, ...row } })
}

export interface DueQuery extends PageQuery {
  readonly positionId?: string | undefined
  readonly areaId?: string | undefined
  readonly task?: string | undefined
  readonly state?: string | undefined
  readonly search?: string | undefined
}

/** What is due, the longest due first: read from grease_due, which every write keeps. */
export async function listDueItems(sql: Sql, siteId: string, query: DueQuery) {
  const where = new Where()
    .add((value) => `d.site_id = ${value(siteId)}::uuid`)
    .addIf(query.areaId, (id) => `d.area_id = ${id}::uuid`)
    .addIf(query.positionId, (id) => `d.position_id = ${id}::uuid`)
    .addIf(query.task, (task) => `d.task = ${task}`)
    .addIf(query.state, (state) => `d.state = ${state}`)
    .addIf(
      query.search === undefined || query.search === '' ? undefined : contains(query.search),
      (text) => `(${searched.map((column) => `${column} ilike ${text}`).join(' or ')})`,
    )
  const sort = { column: 'd.due_on', type: 'date', descending: false } as const
  // a search looks at the places too, anything else only at the due rows: then the places are joined to one page of them
  const tables = query.search ? { from: `grease_due d ${duePlaces}` } : { from: 'grease_due d', join: duePlaces }
  const spec = { select: dueColumns, ...tables, where, sort, id: 'd.id' }
  const { rows, nextCursor } = await readPage<DueRow>(sql, spec, query)
  return { items: rows.map(presentDue), nextCursor }
}

/** What these positions are due. */
export async function dueItemsAt(sql: Sql, siteId: string, positionIds: readonly string[]): Promise<DueItem[]> {
  const rows = await sql<DueRow>(
    `select ${dueColumns} from grease_due d ${duePlaces}
     where d.site_id = $1::uuid and d.position_id = any($2::uuid[]) order by d.due_on, d.id`,
    [siteId, positionIds],
  )
  return rows.map(presentDue)
}

function presentDue(row: DueRow): DueItem {
  return { ...row, lastGreasedAt: row.lastGreasedAt?.toISOString() ?? null }
}

const searched = ['p.tag', 'p.name', 'm.tag', 'm.name', 'grease.name', 'plan.oil']

type DueRow = Omit<DueItem, 'lastGreasedAt'> & { lastGreasedAt: Date | null }

const dueColumns = `d.id as "planId", d.position_id as "positionId", p.tag, p.name as "positionName", m.name as "machineName",
  d.area_id as "areaId", a.name as "areaName", d.task, d.way, plan.grease_id as "greaseId", grease.name as "greaseName", plan.oil,
  plan.dose_g as "doseG", plan.entry, plan.interval_hours as "intervalHours", plan.calendar_months as "calendarMonths",
  plan.calendar_days as "calendarDays", d.last_greased_at as "lastGreasedAt", d.due_on::text as "dueOn", d.due_run_hours as "dueRunHours", d.due_by as "dueBy",
  d.estimated, d.state, meter.last_total_hours as "meterLastTotalHours"`
const duePlaces = `join position p on p.site_id = d.site_id and p.id = d.position_id
  join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
  join machine m on m.site_id = s.site_id and m.id = s.machine_id
  join area a on a.site_id = d.site_id and a.id = d.area_id
  join grease_plan plan on plan.site_id = d.site_id and plan.id = d.id
  left join grease on grease.site_id = plan.site_id and grease.id = plan.grease_id
  left join meter on meter.site_id = m.site_id and meter.machine_id = m.id`

export interface InitialFillRow {
  readonly id: string
  readonly greasedAt: Date
  readonly greaseId: string
  readonly doseG: number
  readonly note: string
  readonly runHours: number | null
  readonly hoursSource: 'meter' | 'estimate' | 'none'
}

/** The first fill that counts of the bearing that was mounted at a moment. */
export async function findInitialFill(tx: SiteTx, positionId: string, at: Date): Promise<InitialFillRow | undefined> {
  const [row] = await tx.sql<InitialFillRow>(
    `select g.id, g.greased_at as "greasedAt", g.grease_id as "greaseId", g.dose_g as "doseG", g.note,
       g.run_hours as "runHours", g.hours_source as "hoursSource"
     from greasing g
     where g.site_id = $1::uuid and g.position_id = $2::uuid and g.greased_at = $3::timestamptz and g.kind = 'initial-fill'
       and ${counts}`,
    [tx.scope.siteId, positionId, at],
  )
  return row
}
