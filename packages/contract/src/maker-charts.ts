import { z } from 'zod'
import {
  Id,
  Micrometres,
  Millimetres,
  Name,
  Text,
  page,
  pageQuery,
  recordParams,
  rowShape,
  siteParams,
} from './common.ts'
import { endpoint } from './endpoint.ts'
import { Band } from './judgement.ts'
import { ClearanceClass, Taper } from './register-tables.ts'
import { engineering, everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

const bandLimit = Micrometres.refine((um) => um > 0, 'A reduction is above 0')
const clearance = Micrometres.refine((um) => um >= 0, 'A clearance is 0 or more')
  .nullable()
  .default(null)

/** One row of a maker's reduction chart: for bores over `overMm` up to and including `inclMm`. */
export const MakerChartRow = z.object({
  id: Id,
  overMm: z.number().min(0).max(10_000),
  inclMm: Millimetres,
  taper: Taper,
  clearanceClass: ClearanceClass.nullable()
    .default(null)
    .meta({ description: 'The class that the row is for; null: every class without a row of its own' }),
  reductionMinUm: bandLimit,
  reductionMaxUm: bandLimit,
  residualMinCnUm: clearance,
  residualMinC3Um: clearance,
  residualMinC4Um: clearance,
  driveUpMinMm: Millimetres.nullable().default(null),
  driveUpMaxMm: Millimetres.nullable().default(null),
})
export type MakerChartRow = z.infer<typeof MakerChartRow>

const head = { maker: Name, document: Name, edition: Name, page: Text.nullable().default(null) }
const rows = z.array(MakerChartRow).min(1, 'A chart has at least one row').max(200)

export const MakerChartSummary = z.object({ ...rowShape, ...head, rowCount: z.int() })
const replacesId = Id.nullable().default(null).meta({ description: 'The chart whose next edition this is' })
export const MakerChart = z
  .object({
    ...rowShape,
    ...head,
    replacesId,
    rows: z.array(MakerChartRow),
    used: z.boolean().meta({
      description:
        'A signed record went by it: rows, maker, document and edition stay; what changed is entered as a new edition',
    }),
    positionCount: z.int().meta({ description: 'Positions that go by it' }),
  })
  .meta({ id: 'MakerChart' })
export type MakerChart = z.infer<typeof MakerChart>
export const NewMakerChart = z.object({ id: Id, ...head, replacesId, rows })
export const MakerChartChange = z.strictObject({
  maker: Name.optional(),
  document: Name.optional(),
  edition: Name.optional(),
  page: Text.nullable().optional(),
  rows: rows.optional(),
})

/** What a position's band is by the old edition of a chart and by the new one; null: no band. */
export const ChartTakeoverPosition = z.object({
  id: Id,
  tag: z.string(),
  designation: z.string(),
  before: Band.nullable(),
  after: Band.nullable(),
  changes: z.boolean().meta({ description: 'The limits differ' }),
})
export type ChartTakeoverPosition = z.infer<typeof ChartTakeoverPosition>
export const ChartTakeover = z.object({
  from: z.object({ id: Id, document: z.string(), edition: z.string() }),
  positions: z.array(ChartTakeoverPosition),
})
export type ChartTakeover = z.infer<typeof ChartTakeover>

export const listMakerCharts = endpoint({
  name: 'list-maker-charts',
  method: 'GET',
  path: sitePath('maker-charts'),
  access: everyone,
  summary: "The makers' reduction charts that the site has entered",
  params: siteParams,
  query: z.object(pageQuery),
  replies: { 200: page(MakerChartSummary) },
})
export const readMakerChart = endpoint({
  name: 'read-maker-chart',
  method: 'GET',
  path: sitePath('maker-charts/:id'),
  access: everyone,
  summary: 'A chart with its rows by taper and bore',
  params: recordParams,
  replies: { 200: MakerChart },
})
export const createMakerChart = endpoint({
  name: 'create-maker-chart',
  method: 'POST',
  path: sitePath('maker-charts'),
  access: engineering,
  summary: 'Enter a chart, or a new edition of one; rows that overlap or contradict are refused by their numbers',
  params: siteParams,
  body: NewMakerChart,
  replies: { 201: MakerChart },
})
export const changeMakerChart = endpoint({
  name: 'change-maker-chart',
  method: 'PATCH',
  path: sitePath('maker-charts/:id'),
  access: engineering,
  summary: 'Change a chart that no signed record went by; of one that was used only the page can be changed',
  params: recordParams,
  body: MakerChartChange,
  ifMatch: true,
  replies: { 200: MakerChart },
})

export const readChartTakeover = endpoint({
  name: 'read-chart-takeover',
  method: 'GET',
  path: sitePath('maker-charts/:id/takeover'),
  access: everyone,
  summary: 'The positions that still go by the edition before, with their bands by either; 404 for a first edition',
  params: recordParams,
  replies: { 200: ChartTakeover },
})
export const takeOverPositions = endpoint({
  name: 'take-over-positions',
  method: 'POST',
  path: sitePath('maker-charts/:id/takeover'),
  access: engineering,
  summary: 'Let every position of the edition before go by this chart; records stay as they are',
  params: recordParams,
  body: z.object({
    positionCount: z.int().min(1).meta({ description: 'How many were shown; another number is refused' }),
  }),
  ifMatch: true,
  replies: { 200: MakerChart },
})
