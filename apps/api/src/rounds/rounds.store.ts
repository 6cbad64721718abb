import type { NewRound, ProposedStop, Round, RoundStop, RoundSummary } from '@shaftbook/contract/rounds'
import type { SiteTx, Sql } from '../db/database.ts'
import { contains, readPage, Where, type PageQuery } from '../db/list-page.ts'

type Timed<T> = Omit<T, 'createdAt' | 'updatedAt'> & { createdAt: Date; updatedAt: Date }
type StopRow<T> = Omit<T, 'lastGreasedAt'> & { lastGreasedAt: Date | null }

const pressing = `('due', 'overdue', 'missed', 'never-greased')`

/** Where a position is, by the alias `p`. */
export const placesOfStops = `join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
  join machine m on m.site_id = s.site_id and m.id = s.machine_id
  join area a on a.site_id = m.site_id and a.id = m.area_id`
const planOfStop = `left join grease on grease.site_id = plan.site_id and grease.id = plan.grease_id
  left join grease_due d on d.site_id = plan.site_id and d.id = plan.id`
const stopColumns = `p.id as "positionId", p.tag, p.name as "positionName", m.id as "machineId", m.tag as "machineTag",
  m.name as "machineName", a.id as "areaId", a.name as "areaName", plan.id as "planId", plan.grease_id as "greaseId",
  grease.name as "greaseName", plan.dose_g as "doseG", plan.entry, d.state as "dueState", d.due_on::text as "dueOn",
  d.last_greased_at as "lastGreasedAt"`

export interface ProposalQuery {
  readonly areaIds?: string[] | undefined
  readonly greaseIds?: string[] | undefined
  readonly search?: string | undefined
  readonly dueOnly?: boolean | undefined
  readonly limit: number
}

/** What a round could stop at, in walking order: areas, then machines, then positions by tag. */
export async function proposeStops(sql: Sql, siteId: string, query: ProposalQuery) {
  const where = Where.atSite('plan', siteId)
    .add(() => 'plan.ended_at is null and plan.task is not null and p.retired_at is null')
    .addIf(query.areaIds, (ids) => `a.id = any(${ids}::uuid[])`)
    .addIf(query.greaseIds, (ids) => `plan.grease_id = any(${ids}::uuid[])`)
    .addIf(
      query.search ? contains(query.search) : undefined,
      (text) => `(p.tag ilike ${text} or p.name ilike ${text} or m.tag ilike ${text} or m.name ilike ${text})`,
    )
  if (query.dueOnly) where.add(() => `d.state in ('due-soon', ${pressing.slice(1)}`)
  const limit = where.parameter(query.limit + 1)
  const rows = await sql<StopRow<ProposedStop>>(
    `select ${stopColumns}, plan.task
     from grease_plan plan join position p on p.site_id = plan.site_id and p.id = plan.position_id
     ${placesOfStops} ${planOfStop}
     where ${where.toString()} order by a.walking_order, a.code, m.tag, p.tag, plan.task, p.id limit ${limit}`,
    where.values,
  )
  return { items: rows.slice(0, query.limit).map((row) => stop(row)), more: rows.length > query.limit }
}

/** Rounds by name, each with how many of its stops are due. */
export async function listRounds(sql: Sql, siteId: string, query: PageQuery & { retired?: boolean | undefined }) {
  const where = Where.atSite('r', siteId).add((value) => `r.retired = ${value(query.retired ?? false)}::boolean`)
  const spec = {
    select: `r.id, r.version, r.created_at as "createdAt", r.updated_at as "updatedAt", r.name, r.note, r.retired,
      (select count(*)::int from round_stop st where st.site_id = r.site_id and st.round_id = r.id) as stops,
      (select count(*)::int from round_stop st
         join grease_due d on d.site_id = st.site_id and d.position_id = st.position_id and d.task = st.task
         where st.site_id = r.site_id and st.round_id = r.id and d.state in ${pressing}) as due,
      (select max(w.started_at) from round_walk w where w.site_id = r.site_id and w.round_id = r.id) as "lastWalkedAt"`,
    from: 'round r',
    where,
    sort: { column: 'r.name', type: 'text', descending: false },
    id: 'r.id',
  } as const
  type Row = Timed<Omit<RoundSummary, 'lastWalkedAt'>> & { lastWalkedAt: Date | null }
  const { rows, nextCursor } = await readPage<Row>(sql, spec, query)
  const items = rows.map((row) => ({ ...timed(row), lastWalkedAt: row.lastWalkedAt?.toISOString() ?? null }))
  return { items, nextCursor }
}

/** A round with its stops in order. */
export async function findRound(sql: Sql, siteId: string, id: string): Promise<Round | undefined> {
  const [round] = await sql<Timed<Omit<Round, 'stops'>>>(
    `select r.id, r.version, r.created_at as "createdAt", r.updated_at as "updatedAt", r.name, r.note, r.retired
     from round r where r.site_id = $1::uuid and r.id = $2::uuid`,
    [siteId, id],
  )
  if (!round) return undefined
  const stops = await sql<StopRow<RoundStop>>(
    `select st.id, st.task, ${stopColumns}
     from round_stop st join position p on p.site_id = st.site_id and p.id = st.position_id ${placesOfStops}
     left join grease_plan plan on plan.site_id = st.site_id and plan.position_id = st.position_id and plan.task = st.task
       and plan.ended_at is null
     ${planOfStop}
     where st.site_id = $1::uuid and st.round_id = $2::uuid order by st.stop_number`,
    [siteId, id],
  )
  return { ...timed(round), stops: stops.map((row) => stop(row)) }
}

export type NewStop = NewRound['stops'][number]

export async function insertRound(tx: SiteTx, { id, name, note, stops }: NewRound): Promise<void> {
  await tx.prisma.round.create({ data: { siteId: tx.scope.siteId, id, name, note } })
  await insertStops(tx, id, stops)
}

/** True where the round still had this version. */
export async function updateRound(
  { prisma, scope }: SiteTx,
  wanted: { id: string; version: number },
  { name, note, retired }: Pick<Round, 'name' | 'note' | 'retired'>,
): Promise<boolean> {
  const where = { siteId: scope.siteId, ...wanted }
  return (await prisma.round.updateMany({ where, data: { name, note, retired } })).count === 1
}

export async function replaceStops(tx: SiteTx, roundId: string, stops: readonly NewStop[]): Promise<void> {
  await tx.prisma.roundStop.deleteMany({ where: { siteId: tx.scope.siteId, roundId } })
  await insertStops(tx, roundId, stops)
}

async function insertStops({ prisma, scope }: SiteTx, roundId: string, stops: readonly NewStop[]): Promise<void> {
  const data = stops.map((row, index) => ({ siteId: scope.siteId, roundId, stopNumber: index + 1, ...row }))
  await prisma.roundStop.createMany({ data })
}

/** Which of these positions are at the site and in use. */
export async function usablePositions({ prisma, scope }: SiteTx, ids: string[]): Promise<Set<string>> {
  const where = { siteId: scope.siteId, id: { in: ids }, retiredAt: null }
  return new Set((await prisma.position.findMany({ where, select: { id: true } })).map(({ id }) => id))
}

function stop<T extends { lastGreasedAt: Date | null }>(row: T) {
  return { ...row, lastGreasedAt: row.lastGreasedAt?.toISOString() ?? null }
}

function timed<T extends { createdAt: Date; updatedAt: Date }>(row: T) {
  return { ...row, createdAt: row.createdAt.toISOString(), updatedAt: row.updatedAt.toISOString() }
}
