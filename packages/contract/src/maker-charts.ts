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
import { Taper } from './register-tables.ts'
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
export const MakerChart = z.object({ ...rowShape, ...head, rows: z.array(MakerChartRow) }).meta({ id: 'MakerChart' })
export type MakerChart = z.infer<typeof MakerChart>
export const NewMakerChart = z.object({ id: Id, ...head, rows })
export const MakerChartChange = z.strictObject({
  maker: Name.optional(),
  document: Name.optional(),
  edition: Name.optional(),
  page: Text.nullable().optional(),
  rows: rows.optional(),
})

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
  summary: 'Enter a chart; rows whose bore ranges overlap are refused',
  params: siteParams,
  body: NewMakerChart,
  replies: { 201: MakerChart },
})
export const changeMakerChart = endpoint({
  name: 'change-maker-chart',
  method: 'PATCH',
  path: sitePath('maker-charts/:id'),
  access: engineering,
  summary: 'Change a chart; records judged by it stay as they are',
  params: recordParams,
  body: MakerChartChange,
  ifMatch: true,
  replies: { 200: MakerChart },
})
