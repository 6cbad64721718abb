import { z } from 'zod'
import { Day, Id, Instant, Micrometres, Text, page, pageQuery, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { Flag } from './flags.ts'
import { GreasePlan, GunPlan } from './grease-plans.ts'
import { DueItem, DueState, WindowResult } from './greasing.ts'
import { Kit } from './kits.ts'
import { Band, ResidualVerdict, Verdict } from './judgement.ts'
import { areas, bearingTypes, machines, meters, positions, shafts } from './register-tables.ts'
import { EndKind } from './removals.ts'
import { everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

/** A line of the register as the screens list it. */
export const PositionListItem = z.object({
  id: Id,
  tag: z.string(),
  name: z.string(),
  locating: z.boolean(),
  areaId: Id,
  areaName: z.string(),
  machineId: Id,
  machineTag: z.string(),
  machineName: z.string(),
  shaftId: Id,
  shaftName: z.string(),
  designation: z.string(),
  fittedAt: Instant.nullable(),
  verdict: Verdict.nullable(),
  residual: ResidualVerdict.nullable(),
  dueOn: Day.nullable().meta({ description: 'Of the task that is due first' }),
  dueState: DueState.nullable(),
  sealedForLife: z.boolean(),
  openFlags: z.int(),
  retired: z.boolean(),
})
export type PositionListItem = z.infer<typeof PositionListItem>

export const listPositionBoard = endpoint({
  name: 'list-position-board',
  method: 'GET',
  path: sitePath('position-board'),
  access: everyone,
  summary:
    'Positions with what is fitted, its verdict and its next greasing; search by tag, machine, bearing or kit part',
  params: siteParams,
  query: z.object({
    ...pageQuery,
    search: Text.optional(),
    areaId: Id.optional(),
    machineId: Id.optional(),
    verdict: Verdict.optional(),
    dueState: DueState.optional(),
    sort: z.enum(['tag', '-tag', 'dueOn', '-dueOn']).default('tag'),
  }),
  replies: { 200: page(PositionListItem) },
})

export const TreeArea = z.object({ id: Id, code: z.string(), name: z.string(), machines: z.int(), openFlags: z.int() })
export const listTreeAreas = endpoint({
  name: 'list-tree-areas',
  method: 'GET',
  path: sitePath('tree'),
  access: everyone,
  summary: 'The areas of the site in walking order, with counts',
  params: siteParams,
  replies: { 200: z.object({ areas: z.array(TreeArea) }) },
})
export const TreeMachine = z.object({
  id: Id,
  tag: z.string(),
  name: z.string(),
  standby: z.boolean(),
  shafts: z.array(
    z.object({
      id: Id,
      code: z.string(),
      name: z.string(),
      positions: z.array(
        z.object({
          id: Id,
          tag: z.string(),
          name: z.string(),
          locating: z.boolean(),
          designation: z.string(),
          verdict: Verdict.nullable(),
          openFlags: z.int(),
        }),
      ),
    }),
  ),
})
export type TreeMachine = z.infer<typeof TreeMachine>
export const listTreeMachines = endpoint({
  name: 'list-tree-machines',
  method: 'GET',
  path: sitePath('tree/:id'),
  access: everyone,
  summary: 'The machines of an area by tag, each with its shafts and positions',
  params: recordParams,
  query: z.object(pageQuery),
  replies: { 200: page(TreeMachine) },
})

export const Fitment = z
  .object({
    id: Id,
    positionId: Id,
    bearingId: Id,
    designation: z.string(),
    serial: z.string().nullable(),
    fittedAt: Instant,
    removedAt: Instant.nullable(),
    runHours: z.number().nullable(),
    hoursSource: z.enum(['meter', 'estimate', 'none']),
    entryAgeHours: z.number(),
    mountRecordId: Id.nullable(),
    verdict: Verdict.nullable(),
    residual: ResidualVerdict.nullable(),
    reductionUm: Micrometres.nullable(),
    removalId: Id.nullable(),
    endKind: EndKind.nullable(),
    modeClause: z.string().nullable(),
    modeTerm: z.string().nullable(),
    cause: z.string().nullable(),
  })
  .meta({ id: 'Fitment' })
export type Fitment = z.infer<typeof Fitment>
export const listFitments = endpoint({
  name: 'list-fitments',
  method: 'GET',
  path: sitePath('fitments'),
  access: everyone,
  summary: "Bearings' stays at positions, newest first",
  params: siteParams,
  query: z.object({
    ...pageQuery,
    positionId: Id.optional(),
    bearingId: Id.optional(),
    open: z.enum(['true', 'false']).optional(),
  }),
  replies: { 200: page(Fitment) },
})
export const readFitment = endpoint({
  name: 'read-fitment',
  method: 'GET',
  path: sitePath('fitments/:id'),
  access: everyone,
  summary: 'One stay of a bearing at a position',
  params: recordParams,
  replies: { 200: Fitment },
})

export const PositionOverview = z
  .object({
    position: positions.Row,
    shaft: shafts.Row,
    machine: machines.Row,
    area: areas.Row,
    bearingType: bearingTypes.Row,
    meter: z
      .object({ ...meters.Row.shape, lastReadAt: Instant.nullable(), lastTotalHours: z.number().nullable() })
      .nullable(),
    fitment: Fitment.nullable(),
    fittedType: bearingTypes.Row.nullable(),
    band: Band.nullable().meta({
      description: 'For the bearing type of the position: own, chart or guide, in this order',
    }),
    residualMinUm: Micrometres.nullable(),
    plan: GunPlan.nullable(),
    due: DueItem.nullable().meta({ description: 'Of regreasing by gun' }),
    plans: z.array(GreasePlan).meta({ description: 'All in force, one for each task; sealed for life is one without' }),
    tasks: z.array(DueItem).meta({ description: 'What is due of all of them, the longest due first' }),
    flags: z.array(Flag),
    kit: Kit.nullable(),
  })
  .meta({ id: 'PositionOverview' })
export type PositionOverview = z.infer<typeof PositionOverview>
export const readPositionOverview = endpoint({
  name: 'read-position-overview',
  method: 'GET',
  path: sitePath('positions/:id/overview'),
  access: everyone,
  summary: 'Everything that stands at a position today',
  params: recordParams,
  replies: { 200: PositionOverview },
})

/** What the life strip draws: all fitments and the days of greasings (the newest 1,000). */
export const PositionHistory = z.object({
  from: Instant.nullable(),
  fitments: z.array(Fitment),
  greasings: z.array(z.object({ id: Id, greasedAt: Instant, doseG: z.number(), windowResult: WindowResult })),
  olderGreasingsLeftOut: z.boolean(),
})
export type PositionHistory = z.infer<typeof PositionHistory>
export const readPositionHistory = endpoint({
  name: 'read-position-history',
  method: 'GET',
  path: sitePath('positions/:id/history'),
  access: everyone,
  summary: 'The life strip of a position',
  params: recordParams,
  replies: { 200: PositionHistory },
})
