import type { NewRoundWalk, RoundWalk, RoundWalkSummary, WalkStop } from '@shaftbook/contract/round-walks'
import type { SiteTx, Sql } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'
import { placesOfStops } from './rounds.store.ts'

const headColumns = `w.id, w.round_id as "roundId", r.name as "roundName", w.started_at as "startedAt",
  starter.name as "startedBy", w.ended_at as "endedAt", w.note`
const headTables = `round_walk w join round r on r.site_id = w.site_id and r.id = w.round_id
  join person starter on starter.id = w.started_by`
type Started<T> = Omit<T, 'startedAt' | 'endedAt'> & { startedAt: Date; endedAt: Date | null }

const resultColumns = `ws.id, ws.walk_id as "walkId", ws.stop_id as "stopId", ws.position_id as "positionId", ws.task,
  ws.outcome, ws.done_at as "doneAt", ws.reason, ws.greasing_id as "greasingId", g.dose_g as "doseG",
  g.planned_dose_g as "plannedDoseG", gun.name as "gunName", g.strokes, ws.overdose_confirmed as "overdoseConfirmed",
  ws.extra_reason as "extraReason", ws.old_grease as "oldGrease", ws.relief_closed as "reliefClosed",
  ws.temperature_c as "temperatureC", ws.note, signer.name as "signedBy"`
const resultTables = `walk_stop ws join person signer on signer.id = ws.signed_by
  left join greasing g on g.site_id = ws.site_id and g.id = ws.greasing_id
  left join gun on gun.site_id = g.site_id and gun.id = g.gun_id`
type ResultRow = Omit<WalkStop, 'doneAt'> & { doneAt: Date }

/** Walks of rounds, the latest first, each with what came of it. */
export async function listWalks(sql: Sql, siteId: string, query: PageQuery & { roundId?: string | undefined }) {
  const where = Where.atSite('w', siteId).addIf(query.roundId, (id) => `w.round_id = ${id}::uuid`)
  const count = (outcome: string): string => `(select count(*)::int from walk_stop ws
    where ws.site_id = w.site_id and ws.walk_id = w.id and ws.outcome = '${outcome}') as ${outcome}`
  const spec = {
    select: `${headColumns}, jsonb_array_length(w.stops) as stops, ${['done', 'checked', 'skipped'].map(count).join(', ')}`,
    from: headTables,
    where,
    sort: { column: 'w.started_at', type: 'timestamptz', descending: true },
    id: 'w.id',
  } as const
  const { rows, nextCursor } = await readPage<Started<RoundWalkSummary>>(sql, spec, query)
  return { items: rows.map((row) => started(row)), nextCursor }
}

/** One walk: its stops in order, each with its result. */
export async function findWalk(sql: Sql, siteId: string, id: string): Promise<RoundWalk | undefined> {
  const [head] = await sql<Started<Omit<RoundWalk, 'stops'>>>(
    `select ${headColumns} from ${headTables} where w.site_id = $1::uuid and w.id = $2::uuid`,
    [siteId, id],
  )
  if (!head) return undefined
  const stops = await sql<Omit<RoundWalk['stops'][number], 'result'>>(
    `select st."id", st."positionId", st.task, p.tag, m.name as "machineName", a.name as "areaName"
     from round_walk w
     cross join lateral rows from (jsonb_to_recordset(w.stops) as (id uuid, "positionId" uuid, task text))
       with ordinality as st (id, "positionId", task, number)
     join position p on p.site_id = w.site_id and p.id = st."positionId" ${placesOfStops}
     where w.site_id = $1::uuid and w.id = $2::uuid order by st.number`,
    [siteId, id],
  )
  const results = await sql<ResultRow>(
    `select ${resultColumns} from ${resultTables} where ws.site_id = $1::uuid and ws.walk_id = $2::uuid`,
    [siteId, id],
  )
  const byStop = new Map(results.map((row) => [row.stopId, signed(row)]))
  return { ...started(head), stops: stops.map((stop) => ({ ...stop, result: byStop.get(stop.id) ?? null })) }
}

export async function findResult(sql: Sql, siteId: string, id: string): Promise<WalkStop | undefined> {
  const [row] = await sql<ResultRow>(
    `select ${resultColumns} from ${resultTables} where ws.site_id = $1::uuid and ws.id = $2::uuid`,
    [siteId, id],
  )
  return row && signed(row)
}

export async function insertWalk(
  { prisma, scope }: SiteTx,
  walk: Omit<NewRoundWalk, 'startedAt'> & { startedAt: Date; startedBy: string },
): Promise<void> {
  await prisma.roundWalk.create({ data: { siteId: scope.siteId, ...walk } })
}

/** The stop of a walk; undefined where the walk does not have it, null where there is no such walk. */
export async function findStop({ prisma, scope }: SiteTx, walkId: string, stopId: string) {
  const walk = await prisma.roundWalk.findUnique({
    where: { siteId_id: { siteId: scope.siteId, id: walkId } },
    select: { stops: true },
  })
  if (!walk) return null
  return (walk.stops as unknown as NewRoundWalk['stops']).find(({ id }) => id === stopId)
}

/** Ends a walk that goes on still. */
export async function endWalk(
  { prisma, scope }: SiteTx,
  id: string,
  end: { endedAt: Date; endedBy: string; note: string },
): Promise<void> {
  await prisma.roundWalk.updateMany({ where: { siteId: scope.siteId, id, endedAt: null }, data: end })
}

export interface NewResultRow {
  readonly id: string
  readonly walkId: string
  readonly stopId: string
  readonly positionId: string
  readonly task: string
  readonly outcome: string
  readonly doneAt: Date
  readonly reason: string
  readonly greasingId: string | null
  readonly overdoseConfirmed: boolean
  readonly extraReason: string
  readonly oldGrease: string | null
  readonly reliefClosed: boolean | null
  readonly temperatureC: number | null
  readonly note: string
  readonly signedAt: Date
  readonly signedBy: string
}

export async function insertResult({ prisma, scope }: SiteTx, row: NewResultRow): Promise<void> {
  await prisma.walkStop.create({ data: { siteId: scope.siteId, ...row } })
}

/** Whether the stop of the walk has its result already. */
export async function hasResult({ prisma, scope }: SiteTx, walkId: string, stopId: string): Promise<boolean> {
  return (await prisma.walkStop.count({ where: { siteId: scope.siteId, walkId, stopId } })) > 0
}

export interface GunRow {
  readonly name: string
  readonly gramsPerStroke: number
  readonly greaseId: string | null
  readonly updatedAt: Date
}

export async function findGun({ prisma, scope }: SiteTx, id: string): Promise<GunRow | null> {
  return await prisma.gun.findUnique({ where: { siteId_id: { siteId: scope.siteId, id } } })
}

function started<T extends { startedAt: Date; endedAt: Date | null }>(row: T) {
  return { ...row, startedAt: row.startedAt.toISOString(), endedAt: row.endedAt?.toISOString() ?? null }
}

function signed(row: ResultRow): WalkStop {
  return { ...row, doneAt: row.doneAt.toISOString() }
}

export async function knownPositions({ prisma, scope }: SiteTx, ids: string[]): Promise<Set<string>> {
  const rows = await prisma.position.findMany({
    where: { siteId: scope.siteId, id: { in: ids } },
    select: { id: true },
  })
  return new Set(rows.map(({ id }) => id))
}
