import { notJudged } from '@shaftbook/contract/judge-mount'
import type { Judgement } from '@shaftbook/contract/judgement'
import type { MountDecision } from '@shaftbook/contract/mount-decisions'
import { MountDetails } from '@shaftbook/contract/mount-details'
import { MountSheet } from '@shaftbook/contract/mount-sheet'
import type { MountRecord, Reading } from '@shaftbook/contract/mounts'
import { v7 as uuidv7 } from 'uuid'
import type { z } from 'zod'
import { Prisma } from '../../../../prisma/client/client.ts'
import type { Sql, SiteTx } from '../db/database.ts'
import { nmFromUm, umFromNm } from '../db/units.ts'

/** What is written down at the shaft, beside the readings. */
export type Sheet = z.output<typeof MountSheet>

const sheetFields = Object.keys(MountSheet.shape) as (keyof Sheet)[]
const sheetColumns = sheetFields.map((field) => `m.${snake(field)} as "${field}"`).join(', ')

function snake(field: string): string {
  return field.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
}

/** Exactly the fields of the sheet, out of whatever holds them. */
export function sheetOf(holder: Sheet): Sheet {
  return Object.fromEntries(sheetFields.map((field) => [field, holder[field]])) as unknown as Sheet
}

type RecordRow = Omit<MountRecord, 'details' | 'mountedAt' | 'signedAt' | 'createdAt' | 'readings' | 'judgement'> & {
  mountedAt: Date
  signedAt: Date | null
  createdAt: Date
  judgement: Judgement | null
  details: unknown
  decisions: MountDecision[] | null
}

const decisionsSql = `(
    select jsonb_agg(jsonb_build_object('id', d.id, 'kind', d.kind, 'until', d.until, 'reason', d.reason,
      'decidedAt', d.decided_at, 'decidedBy', decider.name) order by d.decided_at desc, d.id desc)
    from mount_decision d left join person decider on decider.id = d.decided_by
    where d.site_id = m.site_id and d.mount_record_id = m.id)`
const recordSql = `
  select m.id, m.version, m.position_id as "positionId", p.tag, machine.name as "machineName", m.fitment_id as "fitmentId",
    jsonb_build_object('id', b.id, 'bearingTypeId', b.bearing_type_id, 'serial', b.serial, 'lot', b.lot, 'maker', b.maker,
      'packedOn', b.packed_on, 'designation', t.designation, 'boreMm', t.bore_mm, 'taper', t.taper) as bearing,
    m.clearance_class as "clearanceClass", ${sheetColumns}, m.run_hours as "runHours", m.no_hours_reason as "noHoursReason",
    m.removal_draft as removal, m.plan_id as "planId",
    m.judgement, ${decisionsSql} as decisions, m.signed_at as "signedAt", person.name as "signedBy", m.corrects_id as "correctsId",
    c.id as "correctedById", m.correction_reason as "correctionReason", m.created_at as "createdAt"
  from mount_record m
  join position p on p.site_id = m.site_id and p.id = m.position_id
  join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
  join machine on machine.site_id = s.site_id and machine.id = s.machine_id
  join bearing b on b.site_id = m.site_id and b.id = m.bearing_id
  join bearing_type t on t.site_id = b.site_id and t.id = b.bearing_type_id
  left join person on person.id = m.signed_by
  left join mount_record c on c.site_id = m.site_id and c.corrects_id = m.id
  where m.site_id = $1::uuid and m.id = $2::uuid`

const readingsSql = `
  select moment, step_number as step, struck, bearing_row as row, reading_number as number, clearance_nm as "clearanceNm", typed_value as "typedValue",
    typed_unit as "typedUnit"
  from mount_reading where site_id = $1::uuid and mount_record_id = $2::uuid
  order by moment, step_number, bearing_row, reading_number`

export async function findRecord(sql: Sql, siteId: string, id: string): Promise<MountRecord | undefined> {
  const [row] = await sql<RecordRow>(recordSql, [siteId, id])
  if (!row) return undefined
  const readings = await sql<Omit<Reading, 'clearanceUm'> & { clearanceNm: number }>(readingsSql, [siteId, id])
  return {
    ...row,
    mountedAt: row.mountedAt.toISOString(),
    signedAt: row.signedAt?.toISOString() ?? null,
    createdAt: row.createdAt.toISOString(),
    readings: readings.map(({ clearanceNm, ...reading }) => ({ ...reading, clearanceUm: umFromNm(clearanceNm) })),
    judgement: row.judgement ?? notJudged,
    details: MountDetails.parse(row.details),
    decisions: (row.decisions ?? []).map((decision) => ({
      ...decision,
      decidedAt: new Date(decision.decidedAt).toISOString(),
    })),
  }
}

export async function findPositionOf(tx: SiteTx, recordId: string): Promise<string | undefined> {
  const { siteId } = tx.scope
  const record = await tx.prisma.mountRecord.findUnique({
    where: { siteId_id: { siteId, id: recordId } },
    select: { positionId: true },
  })
  return record?.positionId
}

/** What a record says, judged. */
export interface RecordContents {
  readonly bearingId: string
  readonly sheet: Sheet
  readonly runHours: number | null
  readonly noHoursReason: string | null
  readonly removal: MountRecord['removal']
  readonly planId: string | null
  readonly clearanceClass: string
  readonly readings: readonly Reading[]
  readonly judgement: Judgement
}

export interface NewRecord extends RecordContents {
  readonly id: string
  readonly positionId: string
  readonly createdBy: string
  readonly createdAt: Date
  readonly correctsId?: string
  readonly correctionReason?: string
}

/** Adds a record that is not signed yet, with its readings. */
export async function addRecord(tx: SiteTx, record: NewRecord): Promise<void> {
  const { siteId } = tx.scope
  const { id, positionId, createdBy, createdAt, correctsId, correctionReason } = record
  const head = { siteId, id, positionId, createdBy, createdAt, correctsId, correctionReason }
  await tx.prisma.mountRecord.create({ data: { ...head, ...contentColumns(record) } })
  await addReadings(tx, id, record.readings)
}

/** Replaces what a record says that is not signed yet. */
export async function changeRecord(tx: SiteTx, id: string, contents: RecordContents): Promise<void> {
  const { siteId } = tx.scope
  await tx.prisma.mountRecord.update({ where: { siteId_id: { siteId, id } }, data: contentColumns(contents) })
  await tx.prisma.mountReading.deleteMany({ where: { siteId, mountRecordId: id } })
  await addReadings(tx, id, contents.readings)
}

async function addReadings(tx: SiteTx, mountRecordId: string, readings: readonly Reading[]): Promise<void> {
  const { siteId } = tx.scope
  await tx.prisma.mountReading.createMany({
    data: readings.map(({ moment, step, row, number, clearanceUm, typedValue, typedUnit, struck }) => ({
      siteId,
      id: uuidv7(),
      mountRecordId,
      moment,
      stepNumber: step,
      struck,
      bearingRow: row,
      readingNumber: number,
      clearanceNm: nmFromUm(clearanceUm),
      typedValue,
      typedUnit,
    })),
  })
}

function contentColumns({ sheet, judgement, removal, ...contents }: RecordContents) {
  const { bearingId, planId, runHours, noHoursReason, clearanceClass } = contents
  return {
    bearingId,
    planId,
    runHours,
    noHoursReason,
    clearanceClass,
    ...sheet,
    mountedAt: new Date(sheet.mountedAt),
    removalDraft: removal ?? Prisma.DbNull,
    ...judgementColumns(judgement),
  }
}

function judgementColumns(judgement: Judgement) {
  return {
    benchMeanNm: nmFromUm(judgement.benchMeanUm),
    mountedMeanNm: nmFromUm(judgement.mountedMeanUm),
    reductionNm: nmFromUm(judgement.reductionUm),
    bandMinNm: nmFromUm(judgement.band?.minUm ?? null),
    bandMaxNm: nmFromUm(judgement.band?.maxUm ?? null),
    residualMinNm: nmFromUm(judgement.residualMinUm),
    expandedUncertaintyNm: nmFromUm(judgement.expandedUncertaintyUm),
    verdict: judgement.verdict,
    residual: judgement.residual,
    judgement: judgement as unknown as Prisma.InputJsonObject,
    formulaVersion: judgement.formulaVersion,
  }
}

export interface Signature {
  readonly fitmentId: string
  readonly mountedAt: Date
  readonly runHours: number | null
  readonly noHoursReason: string | null
  readonly judgement: Judgement
  readonly signedAt: Date
  readonly signedBy: string
}

/** Signs a record: from now on it never changes. */
export async function signRecord(tx: SiteTx, id: string, { judgement, ...signature }: Signature): Promise<void> {
  const { siteId } = tx.scope
  await tx.prisma.mountRecord.update({
    where: { siteId_id: { siteId, id } },
    data: { ...signature, removalDraft: Prisma.DbNull, ...judgementColumns(judgement) },
  })
}
