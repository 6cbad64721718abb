import type { CalendarFeed } from '@shaftbook/contract/greasing-mail'
import type { SiteTx, Sql } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'

const columns = `f.id, f.area_id as "areaId", area.name as "areaName", f.round_id as "roundId", round.name as "roundName",
  f.created_at as "createdAt"`
const tables = `calendar_feed f
  left join area on area.site_id = f.site_id and area.id = f.area_id
  left join round on round.site_id = f.site_id and round.id = f.round_id`

type FeedRow = Omit<CalendarFeed, 'createdAt'> & { createdAt: Date }

function present(row: FeedRow): CalendarFeed {
  return { ...row, createdAt: row.createdAt.toISOString() }
}

/** The links of one person, oldest first. */
export async function listFeeds(sql: Sql, siteId: string, personId: string, query: PageQuery) {
  const where = Where.atSite('f', siteId).add((value) => `f.person_id = ${value(personId)}::uuid`)
  const sort = { column: 'f.created_at', type: 'timestamptz', descending: false } as const
  const { rows, nextCursor } = await readPage<FeedRow>(
    sql,
    { select: columns, from: tables, where, sort, id: 'f.id' },
    query,
  )
  return { items: rows.map(present), nextCursor }
}

export async function findFeed(tx: SiteTx, id: string): Promise<CalendarFeed | undefined> {
  const [row] = await tx.sql<FeedRow>(
    `select ${columns} from ${tables} where f.site_id = $1::uuid and f.id = $2::uuid`,
    [tx.scope.siteId, id],
  )
  return row && present(row)
}

export interface NewFeed {
  readonly id: string
  readonly personId: string
  readonly areaId: string | null
  readonly roundId: string | null
  readonly secretHash: Uint8Array<ArrayBuffer>
}

export async function addFeed(tx: SiteTx, feed: NewFeed): Promise<void> {
  await tx.prisma.calendarFeed.create({ data: { siteId: tx.scope.siteId, ...feed } })
}

/** Gives a link of a person a new secret; the one before opens nothing any more. Returns whether there was one. */
export async function replaceSecret(tx: SiteTx, { id, personId, secretHash }: NewFeed): Promise<boolean> {
  const { siteId } = tx.scope
  const { count } = await tx.prisma.calendarFeed.updateMany({ where: { siteId, id, personId }, data: { secretHash } })
  return count > 0
}

/** Takes a link of a person away. Returns whether there was one. */
export async function removeFeed(tx: SiteTx, id: string, personId: string): Promise<boolean> {
  const { count } = await tx.prisma.calendarFeed.deleteMany({ where: { siteId: tx.scope.siteId, id, personId } })
  return count > 0
}

export async function countFeeds(tx: SiteTx, personId: string): Promise<number> {
  return await tx.prisma.calendarFeed.count({ where: { siteId: tx.scope.siteId, personId } })
}

/** What the secret of a link opens. */
export interface OpenFeed {
  readonly siteId: string
  readonly siteCode: string
  readonly siteName: string
  readonly timeZone: string
  readonly areaId: string | null
  readonly roundId: string | null
}

/** Asked with nobody signed in: a function of the database finds the link by the hash of its secret. */
export async function feedOfSecret(ask: Sql, secretHash: Uint8Array): Promise<OpenFeed | undefined> {
  const [found] = await ask<OpenFeed>(
    `select site_id as "siteId", site_code as "siteCode", site_name as "siteName", time_zone as "timeZone",
       area_id as "areaId", round_id as "roundId"
     from feed_of_secret($1)`,
    [secretHash],
  )
  return found
}

/** What the link is about in words: its area or round; null: the whole site. */
export async function subjectOf(sql: Sql, { siteId, areaId, roundId }: OpenFeed): Promise<string | null> {
  const [found] = await sql<{ name: string | null }>(
    `select coalesce((select name from area where site_id = $1::uuid and id = $2::uuid),
       (select name from round where site_id = $1::uuid and id = $3::uuid)) as name`,
    [siteId, areaId, roundId],
  )
  return found?.name ?? null
}

/** Whether the site has this round. */
export async function hasRound({ sql, scope }: SiteTx, id: string): Promise<boolean> {
  const rows = await sql('select id from round where site_id = $1::uuid and id = $2::uuid', [scope.siteId, id])
  return rows.length > 0
}
