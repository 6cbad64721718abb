import type { Removal, RemovalListItem } from '@shaftbook/contract/removals'
import type { z } from 'zod'
import type { Sql, SiteTx } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'

/** A removal as it is stored; the term of its mode is looked up in the standard. */
export type StoredRemoval = Omit<Removal, 'modeTerm'>
export type StoredListItem = Omit<z.output<typeof RemovalListItem>, 'modeTerm'>
type Raw<T> = Omit<T, 'removedAt' | 'signedAt'> & { removedAt: Date; signedAt: Date }

const columns = `r.id, r.fitment_id as "fitmentId", r.position_id as "positionId", r.removed_at as "removedAt",
  r.run_hours as "runHours", r.no_hours_reason as "noHoursReason", r.end_kind as "endKind", r.mode_clause as "modeClause",
  r.cause, r.detection, r.evidence, r.observer, r.signed_at as "signedAt", person.name as "signedBy",
  r.corrects_id as "correctsId", r.correction_reason as "correctionReason"`
const signer = 'join person on person.id = r.signed_by'

function present<T extends { removedAt: Date; signedAt: Date }>(row: T) {
  return { ...row, removedAt: row.removedAt.toISOString(), signedAt: row.signedAt.toISOString() }
}

export interface RemovalQuery extends PageQuery {
  readonly positionId?: string | undefined
  readonly endKind?: string | undefined
  readonly modeClause?: string | undefined
}

/** The removals that count: the latest correction of each. A mode takes in the modes below it. */
export async function listStoredRemovals(sql: Sql, siteId: string, query: RemovalQuery) {
  const where = new Where()
    .add((value) => `r.site_id = ${value(siteId)}::uuid`)
    .add(() => 'not exists (select from removal c where c.site_id = r.site_id and c.corrects_id = r.id)')
    .addIf(query.positionId, (id) => `r.position_id = ${id}::uuid`)
    .addIf(query.endKind, (kind) => `r.end_kind = ${kind}`)
    .addIf(query.modeClause, (clause) => `(r.mode_clause = ${clause} or starts_with(r.mode_clause, ${clause} || '.'))`)
  const select = `${columns}, p.tag, m.name as "machineName", t.designation,
    f.entry_age_hours + f.run_hours as "lifeHours", f.hours_source as "hoursSource"`
  const from = `removal r ${signer}
    join position p on p.site_id = r.site_id and p.id = r.position_id
    join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
    join machine m on m.site_id = s.site_id and m.id = s.machine_id
    join fitment f on f.site_id = r.site_id and f.id = r.fitment_id
    join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
    join bearing_type t on t.site_id = b.site_id and t.id = b.bearing_type_id`
  const sort = { column: 'r.removed_at', type: 'timestamptz', descending: true } as const
  const { rows, nextCursor } = await readPage<Raw<StoredListItem>>(
    sql,
    { select, from, where, sort, id: 'r.id' },
    query,
  )
  return { items: rows.map((row): StoredListItem => present(row)), nextCursor }
}

export async function findStoredRemoval(sql: Sql, siteId: string, id: string): Promise<StoredRemoval | undefined> {
  const [row] = await sql<Raw<StoredRemoval>>(
    `select ${columns} from removal r ${signer} where r.site_id = $1::uuid and r.id = $2::uuid`,
    [siteId, id],
  )
  return row && present(row)
}

/** Whether a further removal corrects this one. */
export async function isCorrected(tx: SiteTx, id: string): Promise<boolean> {
  const rows = await tx.sql('select id from removal where site_id = $1::uuid and corrects_id = $2::uuid', [
    tx.scope.siteId,
    id,
  ])
  return rows.length > 0
}

/** The bearing that is in a position now. */
export interface OpenFitment {
  readonly id: string
  readonly bearingId: string
  readonly designation: string
  readonly serial: string | null
  readonly fittedAt: Date
  readonly startRunHours: number | null
}

export async function findOpenFitment(tx: SiteTx, positionId: string): Promise<OpenFitment | undefined> {
  const [fitment] = await tx.sql<OpenFitment>(
    `select f.id, f.bearing_id as "bearingId", t.designation, b.serial, f.fitted_at as "fittedAt",
       f.start_run_hours as "startRunHours"
     from fitment f
     join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
     join bearing_type t on t.site_id = b.site_id and t.id = b.bearing_type_id
     where f.site_id = $1::uuid and f.position_id = $2::uuid and f.removed_at is null`,
    [tx.scope.siteId, positionId],
  )
  return fitment
}

export interface NewRemovalRow {
  readonly id: string
  readonly fitmentId: string
  readonly positionId: string
  readonly removedAt: Date
  readonly runHours: number | null
  readonly noHoursReason: string | null
  readonly endKind: string
  readonly modeClause: string | null
  readonly cause: string | null
  readonly detection: string | null
  readonly evidence: string
  readonly observer: string
  readonly signedAt: Date
  readonly signedBy: string
  readonly correctsId?: string
  readonly correctionReason?: string
}

export async function addRemoval(tx: SiteTx, row: NewRemovalRow): Promise<void> {
  await tx.prisma.removal.create({ data: { siteId: tx.scope.siteId, ...row } })
}

export interface FitmentEnd {
  readonly removedAt: Date
  readonly endRunHours: number | null
  readonly runHours: number
  readonly hoursSource: string
  readonly removalId: string
}

export async function closeFitment(tx: SiteTx, id: string, end: FitmentEnd): Promise<void> {
  const { siteId } = tx.scope
  await tx.prisma.fitment.update({ where: { siteId_id: { siteId, id } }, data: { ...end } })
}

/** Names the removal that counts from now on. */
export async function nameRemoval(tx: SiteTx, fitmentId: string, removalId: string): Promise<void> {
  const { siteId } = tx.scope
  await tx.prisma.fitment.update({ where: { siteId_id: { siteId, id: fitmentId } }, data: { removalId } })
}
