import { z } from 'zod'
import { Day, Id, Instant, Name, Reason, Text, page, pageQuery, recordParams, rowShape, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { engineering, everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

const planShape = {
  plannedFor: Day,
  reason: Reason,
  bearingTypeId: Id.nullable().default(null).meta({ description: 'null: the type of the position' }),
  who: Text.default(''),
  note: Text.default(''),
}
export const MountPlanState = z.enum(['open', 'done', 'dropped'])

/** A mount that an engineer has planned; the sheet that is signed for it closes it. */
export const MountPlan = z
  .object({
    ...rowShape,
    positionId: Id,
    ...planShape,
    tag: z.string(),
    machineName: z.string(),
    areaId: Id,
    areaName: z.string(),
    designation: z.string(),
    kitId: Id.nullable(),
    kitName: z.string().nullable(),
    state: MountPlanState,
    droppedReason: z.string().nullable(),
    mountRecordId: Id.nullable(),
    plannedBy: Name,
    endedAt: Instant.nullable(),
  })
  .meta({ id: 'MountPlan' })
export type MountPlan = z.infer<typeof MountPlan>
export const NewMountPlan = z.object({ id: Id, positionId: Id, ...planShape })
export const MountPlanChange = z.strictObject({
  plannedFor: Day.optional(),
  reason: Reason.optional(),
  bearingTypeId: Id.nullable().optional(),
  who: Text.optional(),
  note: Text.optional(),
  droppedReason: Reason.optional().meta({ description: 'Given: the plan is dropped' }),
})

export const listMountPlans = endpoint({
  name: 'list-mount-plans',
  method: 'GET',
  path: sitePath('mount-plans'),
  access: everyone,
  summary: 'Planned mounts, the nearest day first',
  params: siteParams,
  query: z.object({
    ...pageQuery,
    positionId: Id.optional(),
    areaId: Id.optional(),
    state: MountPlanState.default('open'),
  }),
  replies: { 200: page(MountPlan) },
})
export const readMountPlan = endpoint({
  name: 'read-mount-plan',
  method: 'GET',
  path: sitePath('mount-plans/:id'),
  access: everyone,
  summary: 'One planned mount',
  params: recordParams,
  replies: { 200: MountPlan },
})
export const createMountPlan = endpoint({
  name: 'create-mount-plan',
  method: 'POST',
  path: sitePath('mount-plans'),
  access: engineering,
  summary: 'Plan a mount at a position',
  params: siteParams,
  body: NewMountPlan,
  replies: { 201: MountPlan },
})
export const changeMountPlan = endpoint({
  name: 'change-mount-plan',
  method: 'PATCH',
  path: sitePath('mount-plans/:id'),
  access: engineering,
  summary: 'Change an open plan, or drop it with a reason',
  params: recordParams,
  body: MountPlanChange,
  ifMatch: true,
  replies: { 200: MountPlan },
})
