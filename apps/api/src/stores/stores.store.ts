import type { Kit, KitChange, KitLine, KitSummary, NewKit, PartUse } from '@shaftbook/contract/kits'
import type { z } from 'zod'
import type { SiteTx, Sql } from '../db/database.ts'
import { contains, readPage, Where, type PageQuery } from '../db/list-page.ts'

export type KitQuery = PageQuery & { readonly search?: string | undefined }
export type NewKitLine = z.output<typeof NewKit>['lines'][number]
type Summary = z.output<typeof KitSummary>
type Timed<T> = Omit<T, 'createdAt' | 'updatedAt'> & { createdAt: Date; updatedAt: Date }

export async function listKits(
  sql: Sql,
  siteId: string,
  query: KitQuery,
): Promise<{ items: Summary[]; nextCursor: string | null }> {
  const where = Where.atSite('k', siteId)
  if (query.search) {
    where.add((value) => {
      const pattern = value(contains(query.search as string))
      return `(k.name ilike ${pattern} or k.id in (
        select l.kit_id from kit_line l join part p on p.site_id = l.site_id and p.id = l.part_id
        where p.number ilike ${pattern} or p.designation ilike ${pattern}))`
    })
  }
  const spec = {
    select: `k.id, k.version, k.created_at as "createdAt", k.updated_at as "updatedAt", k.name, k.note,
      (select count(*)::int from kit_line l where l.site_id = k.site_id and l.kit_id = k.id) as lines,
      (select count(*)::int from position p where p.site_id = k.site_id and p.kit_id = k.id and p.retired_at is null)
        as positions`,
    from: 'kit k',
    where,
    sort: { column: 'k.name', type: 'text', descending: false },
    id: 'k.id',
  } as const
  const { rows, nextCursor } = await readPage<Timed<Summary>>(sql, spec, query)
  return { items: rows.map(timed), nextCursor }
}

export async function findKit(sql: Sql, siteId: string, id: string): Promise<Kit | undefined> {
  return (await findKits(sql, siteId, [id]))[0]
}

/** Kits with their lines in order. One statement. */
export async function findKits(sql: Sql, siteId: string, ids: readonly string[]): Promise<Kit[]> {
  const kits = await sql<Timed<Omit<Kit, 'lines'>> & { lines: KitLine[] }>(
    `select k.id, k.version, k.created_at as "createdAt", k.updated_at as "updatedAt", k.name, k.note,
       coalesce((
         select jsonb_agg(jsonb_build_object('id', l.id, 'lineNumber', l.line_number, 'partId', l.part_id,
           'quantity', l.quantity, 'unit', l.unit, 'need', l.need, 'reason', l.reason, 'partNumber', p.number,
           'designation', p.designation, 'kind', p.kind, 'description', p.description, 'bin', p.bin)
           order by l.line_number)
         from kit_line l join part p on p.site_id = l.site_id and p.id = l.part_id
         where l.site_id = k.site_id and l.kit_id = k.id
       ), '[]') as lines
     from kit k where k.site_id = $1::uuid and k.id = any($2::uuid[])`,
    [siteId, ids],
  )
  return kits.map(timed)
}

export async function insertKit(tx: SiteTx, kit: z.output<typeof NewKit>): Promise<void> {
  const { id, name, note, lines } = kit
  await tx.prisma.kit.create({ data: { siteId: tx.scope.siteId, id, name, note } })
  await insertLines(tx, id, lines)
}

/** True where the kit still had this version. */
export async function updateKit(
  { prisma, scope }: SiteTx,
  id: string,
  version: number,
  head: Required<Omit<z.output<typeof KitChange>, 'lines'>>,
): Promise<boolean> {
  const changed = await prisma.kit.updateMany({
    where: { siteId: scope.siteId, id, version },
    data: { name: head.name, note: head.note },
  })
  return changed.count === 1
}

export async function replaceLines(tx: SiteTx, kitId: string, lines: readonly NewKitLine[]): Promise<void> {
  await tx.prisma.kitLine.deleteMany({ where: { siteId: tx.scope.siteId, kitId } })
  await insertLines(tx, kitId, lines)
}

async function insertLines({ prisma, scope }: SiteTx, kitId: string, lines: readonly NewKitLine[]): Promise<void> {
  const data = lines.map((line, index) => ({ siteId: scope.siteId, kitId, lineNumber: index + 1, ...line }))
  await prisma.kitLine.createMany({ data })
}

export async function knownParts({ prisma, scope }: SiteTx, ids: string[]): Promise<Set<string>> {
  const rows = await prisma.part.findMany({ where: { siteId: scope.siteId, id: { in: ids } }, select: { id: true } })
  return new Set(rows.map((row) => row.id))
}

export async function partExists(sql: Sql, siteId: string, id: string): Promise<boolean> {
  return (
    (await sql<{ id: string }>('select id from part where site_id = $1::uuid and id = $2::uuid', [siteId, id])).length >
    0
  )
}

export async function listPartUses(
  sql: Sql,
  siteId: string,
  partId: string,
  query: PageQuery,
): Promise<{ items: PartUse[]; nextCursor: string | null }> {
  const where = Where.atSite('l', siteId)
    .add((value) => `l.part_id = ${value(partId)}::uuid`)
    .add(() => 'p.retired_at is null')
  const spec = {
    select: `p.id as "positionId", p.tag, m.name as "machineName", a.name as "areaName", k.id as "kitId",
      k.name as "kitName", l.quantity, l.unit, l.need`,
    from: `kit_line l
      join kit k on k.site_id = l.site_id and k.id = l.kit_id
      join position p on p.site_id = k.site_id and p.kit_id = k.id
      join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
      join machine m on m.site_id = s.site_id and m.id = s.machine_id
      join area a on a.site_id = m.site_id and a.id = m.area_id`,
    where,
    sort: { column: 'p.tag', type: 'text', descending: false },
    // a part may stand on two lines of a kit
    id: 'l.id',
  } as const
  const { rows, nextCursor } = await readPage<PartUse>(sql, spec, query)
  return { items: rows, nextCursor }
}

function timed<T extends { createdAt: Date; updatedAt: Date }>(row: T) {
  return { ...row, createdAt: row.createdAt.toISOString(), updatedAt: row.updatedAt.toISOString() }
}
