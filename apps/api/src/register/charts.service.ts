import { chartContradictions } from '@shaftbook/bearing/chart-contradictions'
import {
  createMakerChart,
  type MakerChart,
  type MakerChartChange,
  type MakerChartRow,
  type NewMakerChart,
} from '@shaftbook/contract/maker-charts'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import type { Scope } from '../db/database.ts'
import type { PageQuery } from '../db/list-page.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, notFound, versionStale } from '../domain-error.ts'
import * as store from './charts.store.ts'

const noun = 'reduction chart'

export async function listCharts({ db }: Context, scope: Scope, query: PageQuery) {
  return await db.readSite(scope, (sql) => store.listCharts(sql, scope.siteId, query))
}

export async function readChart({ db }: Context, scope: Scope, id: string): Promise<MakerChart> {
  const chart = await db.withSite(scope, (tx) => store.findChart(tx, id))
  if (!chart) throw notFound(noun)
  return chart
}

export async function createChart(
  { db }: Context,
  scope: Scope,
  body: z.output<typeof NewMakerChart>,
): Promise<MakerChart> {
  return await db.withSite(scope, async (tx) => {
    if ((await receive(tx, createMakerChart.name, body.id, body)) === 'new') {
      checkRows(body.rows)
      await store.insertChart(tx, body)
    }
    return (await store.findChart(tx, body.id)) as MakerChart
  })
}

/**
 * Changes a chart; rows, when given, replace the old ones. What a signed record went by stays what it was: of a chart
 * that was used only the page can be mended.
 */
export async function changeChart(
  { db }: Context,
  scope: Scope,
  wanted: { id: string; version: number; change: z.output<typeof MakerChartChange> },
): Promise<MakerChart> {
  const { id, version, change } = wanted
  if (change.rows) checkRows(change.rows)
  return await db.withSite(scope, async (tx) => {
    const before = await store.findChart(tx, id)
    if (!before) throw notFound(noun)
    if (before.used) checkStays(before, change)
    if (!(await store.updateChart(tx, id, version, { ...before, ...change }))) throw versionStale(noun, version)
    if (change.rows && !before.used) await store.replaceRows(tx, id, change.rows)
    return (await store.findChart(tx, id)) as MakerChart
  })
}

type Change = z.output<typeof MakerChartChange>

function checkStays(before: MakerChart, change: Change): void {
  const heads = (['maker', 'document', 'edition'] as const).filter(
    (name) => change[name] !== undefined && change[name] !== before[name],
  )
  const rows = change.rows && !sameRows(before.rows, change.rows) ? ['rows'] : []
  const paths = [...heads, ...rows]
  if (paths.length === 0) return
  const message = `Signed mount records went by ${before.document}, edition ${before.edition}: it stays as it is. Enter what changed as a new edition.`
  throw new DomainError(
    'not-allowed-here',
    message,
    paths.map((path) => ({ path, message: 'stays, as signed records went by it' })),
  )
}

function sameRows(before: readonly MakerChartRow[], after: readonly MakerChartRow[]): boolean {
  const inOrder = (rows: readonly MakerChartRow[]) =>
    rows.map((row) => JSON.stringify(Object.entries(row).toSorted(([a], [b]) => (a < b ? -1 : 1)))).toSorted(byText)
  return JSON.stringify(inOrder(before)) === JSON.stringify(inOrder(after))
}

function byText(a: string, b: string): number {
  return a < b ? -1 : 1
}

/** Refuses rows that contradict themselves or each other; every one is named by its place, from 1. */
function checkRows(rows: readonly MakerChartRow[]): void {
  const faults = chartContradictions(rows)
  const [first] = faults
  if (!first) return
  const sentence = first.message.startsWith('row ') ? first.message : `row ${first.row + 1}: ${first.message}`
  const more = faults.length > 1 ? ` (${faults.length} faults in all)` : ''
  throw new DomainError(
    'not-allowed-here',
    `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}${more}.`,
    faults.map(({ row, field, message }) => ({ path: `rows.${row}.${field}`, message })),
  )
}
