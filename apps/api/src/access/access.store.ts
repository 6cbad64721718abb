import { SiteSettings, type AuditEntry, type Person, type Site } from '@shaftbook/contract/access'
import type { Role } from '@shaftbook/contract/roles'
import type { z } from 'zod'
import type { SiteTx, Sql } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'

export type AuditQuery = PageQuery & { readonly table?: string | undefined; readonly rowId?: string | undefined }
type Audit = z.output<typeof AuditEntry>

export async function findSite({ prisma, scope }: SiteTx): Promise<Site> {
  const site = await prisma.site.findUniqueOrThrow({ where: { id: scope.siteId } })
  const { id, code, name, timeZone, settings } = site
  return { id, code, name, timeZone, settings: SiteSettings.parse(settings) }
}

/** Holds the site, so that two changes at once both stand. */
export async function holdSite({ sql, scope }: SiteTx): Promise<void> {
  await sql('select id from site where id = $1::uuid for no key update', [scope.siteId])
}

export async function updateSite(
  { prisma, scope }: SiteTx,
  change: { name?: string; timeZone?: string; settings?: SiteSettings },
): Promise<void> {
  await prisma.site.updateMany({ where: { id: scope.siteId }, data: { ...change, refreshWanted: true } })
}

const personColumns = `p.id, p.name, p.email, m.role, p.disabled_at is not null as disabled`

export async function listPeople(
  sql: Sql,
  siteId: string,
  query: PageQuery,
): Promise<{ items: Person[]; nextCursor: string | null }> {
  const spec = {
    select: personColumns,
    from: 'membership m join person p on p.id = m.person_id',
    where: Where.atSite('m', siteId),
    sort: { column: 'p.name', type: 'text', descending: false },
    id: 'p.id',
  } as const
  const { rows, nextCursor } = await readPage<Person>(sql, spec, query)
  return { items: rows, nextCursor }
}

export async function findPerson(
  { sql, scope }: SiteTx,
  by: { id: string } | { email: string },
): Promise<Person | undefined> {
  const [condition, value] = 'id' in by ? ['p.id = $2::uuid', by.id] : ['p.email = $2', by.email]
  const [person] = await sql<Person>(
    `select ${personColumns} from membership m join person p on p.id = m.person_id
     where m.site_id = $1::uuid and ${condition}`,
    [scope.siteId, value],
  )
  return person
}

export async function admitPerson(
  { sql }: SiteTx,
  person: { id: string; email: string; name: string; passwordHash: string; role: Role },
): Promise<void> {
  const { id, email, name, passwordHash, role } = person
  await sql('select admit_person($1::uuid, $2, $3, $4, $5)', [id, email, name, passwordHash, role])
}

/** The managers who can sign in, locked so that two changes at once cannot leave the site without one. */
export async function lockManagers({ sql, scope }: SiteTx): Promise<string[]> {
  const rows = await sql<{ person_id: string }>(
    `select m.person_id from membership m
     join person p on p.id = m.person_id and p.disabled_at is null
     where m.site_id = $1::uuid and m.role = 'manager' order by m.person_id for update of m`,
    [scope.siteId],
  )
  return rows.map((row) => row.person_id)
}

export async function updateRole({ prisma, scope }: SiteTx, personId: string, role: Role): Promise<void> {
  await prisma.membership.updateMany({ where: { siteId: scope.siteId, personId }, data: { role } })
}

export async function listAudit(
  sql: Sql,
  siteId: string,
  query: AuditQuery,
): Promise<{ items: Audit[]; nextCursor: string | null }> {
  const where = Where.atSite('e', siteId)
    .addIf(query.table, (value) => `e.table_name = ${value}`)
    .addIf(query.rowId, (value) => `e.row_id = ${value}::uuid`)
  const spec = {
    select: `e.id, e.at, p.name as person, e.table_name as "table", e.row_id as "rowId", e.action, e.before, e.after`,
    from: 'audit_entry e left join person p on p.id = e.person_id',
    where,
    sort: { column: 'e.at', type: 'timestamptz', descending: true },
    id: 'e.id',
  } as const
  const { rows, nextCursor } = await readPage<Omit<Audit, 'at'> & { at: Date }>(sql, spec, query)
  return { items: rows.map((row) => ({ ...row, at: row.at.toISOString() })), nextCursor }
}
