import type { MountPlan, MountPlanChange, NewMountPlan } from '@shaftbook/contract/mount-plans'
import { plantDay } from '@shaftbook/contract/time-zone'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import type { Sql } from '../db/database.ts'
import { receive } from '../db/receipts.ts'
import { fieldError, notFound, versionStale } from '../domain-error.ts'
import { holdPlace, type Place } from '../meters/place.ts'
import { dayOf, doWork, type Work, type Worker } from '../meters/work.ts'
import { basisOf, checkGoesOn } from '../mounts/fitting.ts'
import * as store from './mount-plans.store.ts'

export async function readPlan(sql: Sql, siteId: string, id: string): Promise<MountPlan> {
  const plan = await store.findPlan(sql, siteId, id)
  if (!plan) throw notFound('planned mount')
  return plan
}

/** Plans a mount at a position that is in use, for today or a later day. */
export function createPlan(context: Context, worker: Worker, body: z.output<typeof NewMountPlan>): Promise<MountPlan> {
  return doWork(context, worker, async (work) => {
    if ((await receive(work.tx, 'create-mount-plan', body.id, body)) === 'repeat') return await planOf(work, body.id)
    const place = await holdPlace(work.tx, body.positionId)
    checkInUse(work, place)
    checkDay(work, body.plannedFor)
    await checkType(work, place, body.bearingTypeId)
    await store.addPlan(work.tx, { ...body, plannedBy: work.personId })
    return await planOf(work, body.id)
  })
}

/** Changes what is given of an open plan; a reason for dropping it ends it. */
export function changePlan(
  context: Context,
  worker: Worker,
  wanted: { id: string; version: number },
  change: z.output<typeof MountPlanChange>,
): Promise<MountPlan> {
  return doWork(context, worker, async (work) => {
    const before = await planOf(work, wanted.id)
    const place = await holdPlace(work.tx, before.positionId)
    checkOpen(work, await planOf(work, wanted.id))
    if (change.plannedFor !== undefined) checkDay(work, change.plannedFor)
    await checkType(work, place, change.bearingTypeId ?? null)
    const { droppedReason = null, ...fields } = change
    const after = { ...before, ...fields, droppedReason, endedAt: droppedReason === null ? null : work.now }
    if (!(await store.changePlan(work.tx, wanted, after))) throw versionStale('planned mount', wanted.version)
    return await planOf(work, wanted.id)
  })
}

/** Closes the plan that a mount was made by; one of another position or one that is closed refuses the signature. */
export async function closePlanBy(work: Work, place: Place, planId: string, mountRecordId: string): Promise<void> {
  const plan = await store.findPlan(work.tx.sql, work.tx.scope.siteId, planId)
  if (!plan) throw notFound('planned mount', 'planId')
  if (plan.positionId !== place.positionId) {
    const message = `This mount was planned at ${plan.tag}, not at ${place.tag}: take the plan out of the sheet, or choose the right one.`
    throw fieldError('not-allowed-here', 'planId', message)
  }
  checkOpen(work, plan, 'planId')
  if (!(await store.closePlan(work.tx, planId, mountRecordId, work.now)))
    throw versionStale('planned mount', plan.version)
}

function checkOpen(work: Work, plan: MountPlan, path = 'id'): void {
  if (plan.state === 'open' || plan.endedAt === null) return
  const on = dayOf(work, new Date(plan.endedAt))
  const how = plan.state === 'done' ? `closed by a signed mount on ${on}` : `dropped on ${on}: ${plan.droppedReason}`
  const message = `The mount planned at ${plan.tag} for ${plan.plannedFor} was ${how.replace(/\.$/, '')}.`
  throw fieldError('plan-closed', path, message)
}

function checkInUse(work: Work, { tag, retiredAt }: Place): void {
  if (!retiredAt) return
  const message = `${tag} is retired since ${dayOf(work, retiredAt)}: no mount is planned there.`
  throw fieldError('not-allowed-here', 'positionId', message)
}

function checkDay(work: Work, plannedFor: string): void {
  const today = plantDay(work.now, work.timeZone)
  if (plannedFor >= today) return
  const message = `${plannedFor} is past: plan the mount for today (${today}) or a later day.`
  throw fieldError('not-allowed-here', 'plannedFor', message)
}

async function checkType(work: Work, place: Place, bearingTypeId: string | null): Promise<void> {
  if (bearingTypeId === null) return
  checkGoesOn(place, await basisOf(work, place, bearingTypeId, 'bearingTypeId'), 'bearingTypeId')
}

async function planOf(work: Work, id: string): Promise<MountPlan> {
  return await readPlan(work.tx.sql, work.tx.scope.siteId, id)
}
