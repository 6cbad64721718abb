import type { Observation } from '@shaftbook/contract/observations'
import type { Sql } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'

const columns = `o.id, o.position_id as "positionId", p.tag, o.greasing_id as "greasingId", o.observed_at as "observedAt",
  o.temperature_c as "temperatureC", o.vibration_mm_s as "vibrationMmS", o.zone, o.relief_closed as "reliefClosed",
  o.old_grease_seen as "oldGreaseSeen", o.note, o.signed_at as "signedAt", person.name as "signedBy",
  o.withdrawn_at as "withdrawnAt", o.withdrawn_reason as "withdrawnReason"`
const tables = `observation o
  join position p on p.site_id = o.site_id and p.id = o.position_id
  join person on person.id = o.signed_by`

type Times = 'observedAt' | 'signedAt' | 'withdrawnAt'
type ObservationRow = Omit<Observation, Times> & { observedAt: Date; signedAt: Date; withdrawnAt: Date | null }

function present({ observedAt, signedAt, withdrawnAt, ...row }: ObservationRow): Observation {
  return {
    ...row,
    observedAt: observedAt.toISOString(),
    signedAt: signedAt.toISOString(),
    withdrawnAt: withdrawnAt?.toISOString() ?? null,
  }
}

export interface ObservationQuery extends PageQuery {
  readonly positionId?: string | undefined
  readonly greasingId?: string | undefined
}

export async function listObservations(sql: Sql, siteId: string, query: ObservationQuery) {
  const where = new Where()
    .add((value) => `o.site_id = ${value(siteId)}::uuid`)
    .addIf(query.positionId, (id) => `o.position_id = ${id}::uuid`)
    .addIf(query.greasingId, (id) => `o.greasing_id = ${id}::uuid`)
  const sort = { column: 'o.observed_at', type: 'timestamptz', descending: true } as const
  const spec = { select: columns, from: tables, where, sort, id: 'o.id' }
  const { rows, nextCursor } = await readPage<ObservationRow>(sql, spec, query)
  return { items: rows.map(present), nextCursor }
}

export async function findObservation(sql: Sql, siteId: string, id: string): Promise<Observation | undefined> {
  const [row] = await sql<ObservationRow>(
    `select ${columns} from ${tables} where o.site_id = $1::uuid and o.id = $2::uuid`,
    [siteId, id],
  )
  return row && present(row)
}
