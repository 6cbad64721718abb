import { v7 as newId } from 'uuid'
import type { Prisma } from '../../../../prisma/client/client.ts'
import type { Work } from '../meters/work.ts'
import { replacePlan } from '../greasing/plans.store.ts'

/** Flushing doses of R-CHG, each after a third of the interval. */
export const flushDoses = 3

/** Puts the plan of before in force again with another grease; for flushing at a third of its interval. R-CHG. */
export async function planWith(
  { tx, now }: Work,
  planBeforeId: string,
  greaseId: string,
  { flushing, reason }: { flushing: boolean; reason: string },
): Promise<void> {
  const { siteId } = tx.scope
  const before = await tx.prisma.greasePlan.findUniqueOrThrow({ where: { siteId_id: { siteId, id: planBeforeId } } })
  const third = (value: number | null): number | null =>
    value === null ? null : Math.max(1, Math.floor(value / flushDoses))
  const { intervalHours, calendarMonths } = before
  await replacePlan(tx, {
    id: newId(),
    positionId: before.positionId,
    way: before.way,
    task: before.task,
    greaseId,
    oil: before.oil,
    entry: before.entry,
    doseG: before.doseG,
    intervalHours: flushing ? third(intervalHours) : intervalHours,
    calendarMonths: flushing ? third(calendarMonths) : calendarMonths,
    calendarDays: before.calendarDays,
    reviewOn: flushing ? null : before.reviewOn,
    source: flushing ? 'by-hand' : before.source,
    reason,
    duty: flushing ? {} : (before.duty as Prisma.InputJsonObject),
    createdAt: now,
  })
}
