import { bandOfPosition } from '@shaftbook/contract/band-of-position'
import { labelPaperFault, labelSheet, type LabelSheet } from '@shaftbook/contract/label-sheet'
import { mostLabels, type LabelPaper } from '@shaftbook/contract/papers'
import type { SiteMembership } from '../access/session.ts'
import type { Context } from '../context.ts'
import type { Scope, Sql } from '../db/database.ts'
import { DomainError, notFound } from '../domain-error.ts'
import { findFitting } from '../mounts/fitting.store.ts'
import { findRecord } from '../mounts/mounts.store.ts'
import { findPlaces } from '../positions/overview.store.ts'
import { readOverview } from '../positions/positions.service.ts'
import { blankSheet } from './blank-sheet.ts'
import { mountPaper, type MountPaper } from './mount-paper.ts'
import { findGreaseName, findLabelled, findPhotoCaptions, type LabelQuery } from './papers.store.ts'
import { positionLabels } from './position-labels.ts'

/** Whose papers are printed, and at which address people reach the book. */
export interface Printing {
  readonly scope: Scope
  readonly site: SiteMembership
  /** Such as https://book.example, without a slash at its end. */
  readonly address: string
}

type Bytes = Uint8Array<ArrayBuffer>

export interface Printed {
  readonly bytes: Bytes
  readonly fileName: string
}

export async function printMount({ db, now }: Context, printing: Printing, id: string): Promise<Printed> {
  const { scope, site, address } = printing
  const contents = await db.readSite(scope, async (sql): Promise<MountPaper> => {
    const record = await findRecord(sql, scope.siteId, id)
    if (!record) throw notFound('mount record')
    const [place] = await findPlaces(sql, scope.siteId, [record.positionId])
    if (!place) throw notFound('position')
    return {
      record,
      site: siteOf(site),
      place: {
        positionName: place.position.name,
        machineTag: place.machine.tag,
        areaName: place.area.name,
        locating: place.position.locating,
      },
      greaseName: await findGreaseName(sql, scope.siteId, record.greaseId),
      photos: await findPhotoCaptions(sql, scope.siteId, record.correctsId ?? id),
      correctedBy: await laterOf(sql, scope.siteId, record.correctedById),
      address: `${address}/${site.siteCode}/mounts/${id}`,
      printedAt: now(),
    }
  })
  const { tag, mountedAt } = contents.record
  return { bytes: await mountPaper(contents), fileName: `mount ${tag} ${mountedAt.slice(0, 10)}.pdf` }
}

async function laterOf(sql: Sql, siteId: string, id: string | null): Promise<MountPaper['correctedBy']> {
  const later = id === null ? undefined : await findRecord(sql, siteId, id)
  return later ? { signedAt: later.signedAt, signedBy: later.signedBy, reason: later.correctionReason } : null
}

export async function printBlankSheet(context: Context, printing: Printing, id: string): Promise<Printed> {
  const { scope, site, address } = printing
  const place = await readOverview(context, scope, id)
  const { driveUpMm, lastTorqueNm } = await context.db.readSite(scope, async (sql) => {
    const { position, chart, planned } = await findFitting({ scope, sql }, id, place.bearingType.id)
    const last = place.fitment?.mountRecordId
    return {
      driveUpMm: bandOfPosition(position, planned, chart).band?.driveUpMm ?? null,
      lastTorqueNm: last ? ((await findRecord(sql, scope.siteId, last))?.capBoltTorqueNm ?? null) : null,
    }
  })
  const { tag } = place.position
  const bytes = await blankSheet({
    place,
    site: siteOf(site),
    driveUpMm,
    lastTorqueNm,
    address: positionAddress(address, site.siteCode, tag),
    printedAt: context.now(),
  })
  return { bytes, fileName: `blank sheet ${tag}.pdf` }
}

export async function printLabels(
  { db, now }: Context,
  { scope, site, address }: Printing,
  query: LabelQuery & LabelPaper,
): Promise<Printed> {
  const sheet = sheetOf(query)
  const rows = await db.readSite(scope, (sql) => findLabelled(sql, scope.siteId, query))
  if (rows.length === 0)
    throw new DomainError('not-found', 'No position in service answers to this choice: choose again.')
  if (rows.length > mostLabels) {
    const sentence = `These are more than ${mostLabels} positions: choose an area or a machine, and print in several goes.`
    throw new DomainError('request-invalid', sentence)
  }
  const labels = rows.map(({ tag, name, machineTag, machineName }) => ({
    tag,
    name,
    machine: `${machineTag} ${machineName}`,
    address: positionAddress(address, site.siteCode, tag),
  }))
  const bytes = await positionLabels(labels, sheet, query.paper === 'a4' ? query.startAt : 1, now())
  return { bytes, fileName: `labels ${site.siteCode}.pdf` }
}

function sheetOf(paper: LabelPaper): LabelSheet {
  const fault = labelPaperFault(paper)
  if (fault !== null) throw new DomainError('request-invalid', fault)
  return labelSheet(paper)
}

/** What the QR code on a label holds. */
function positionAddress(address: string, siteCode: string, tag: string): string {
  return `${address}/${siteCode}/at/${encodeURIComponent(tag)}`
}

function siteOf({ siteName, timeZone }: SiteMembership): { name: string; timeZone: string } {
  return { name: siteName, timeZone }
}
