import type { NewMountDecision } from '@shaftbook/contract/mount-decisions'
import type { SiteTx } from '../db/database.ts'

export interface DecisionRow extends NewMountDecision {
  readonly mountRecordId: string
  readonly decidedAt: Date
  readonly decidedBy: string
}

export async function addDecision(tx: SiteTx, { until, ...decision }: DecisionRow): Promise<void> {
  const { siteId } = tx.scope
  await tx.prisma.mountDecision.create({
    data: { siteId, ...decision, until: until === null ? null : new Date(until) },
  })
}

/** Takes the mount flags of a stay off the open list until a day, or brings them back where there is none. */
export async function putOffMountFlags(
  tx: SiteTx,
  fitmentId: string,
  putOff: { until: string; reason: string } | null,
): Promise<void> {
  const { siteId, personId } = tx.scope
  await tx.prisma.flag.updateMany({
    where: { siteId, fitmentId, clearedAt: null, kind: { in: [...mountFlags] } },
    data: {
      putOffUntil: putOff && new Date(putOff.until),
      putOffReason: putOff && putOff.reason,
      putOffBy: putOff && personId,
    },
  })
}

const mountFlags = ['mount-under', 'mount-over', 'mount-not-proven', 'residual-too-small', 'residual-not-proven']
