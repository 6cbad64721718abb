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
import { nmFromUm } from '../db/units.ts'
import { DomainError, fieldError, notFound, versionStale } from '../domain-error.ts'
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

/** Changes a chart; rows, when given, replace the old ones. Records that were judged by it keep their verdicts. */
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
    if (!(await store.updateChart(tx, id, version, { ...before, ...change }))) throw versionStale(noun, version)
    if (change.rows) await store.replaceRows(tx, id, change.rows)
    return (await store.findChart(tx, id)) as MakerChart
  })
}

/** Refuses a row that contradicts itself and rows that claim the same bore; names them by their place, from 1. */
function checkRows(rows: readonly MakerChartRow[]): void {
  rows.forEach(checkRow)
  const placed = rows.map((row, index) => ({ row, index })).sort((a, b) => a.row.overMm - b.row.overMm)
  for (const taper of ['1:12', '1:30'] as const) {
    const ofTaper = placed.filter(({ row }) => row.taper === taper)
    ofTaper.slice(1).forEach((next, at) => {
      const previous = ofTaper[at] as (typeof ofTaper)[number]
      if (next.row.overMm < previous.row.inclMm) throw overlap(previous, next)
    })
  }
}

interface Placed {
  readonly row: MakerChartRow
  readonly index: number
}

function overlap(first: Placed, second: Placed): DomainError {
  const named = ({ row, index }: Placed): string => `row ${index + 1} (over ${row.overMm} to ${row.inclMm} mm)`
  const message = `For taper ${first.row.taper}, ${named(first)} and ${named(second)} overlap: make the ranges meet without overlap.`
  return new DomainError('not-allowed-here', message, [
    { path: `rows.${first.index}.inclMm`, message: `overlaps ${named(second)}` },
    { path: `rows.${second.index}.overMm`, message: `overlaps ${named(first)}` },
  ])
}

function checkRow(row: MakerChartRow, index: number): void {
  const refuse = (field: keyof MakerChartRow, sentence: string): DomainError =>
    fieldError('not-allowed-here', `rows.${index}.${field}`, `Row ${index + 1}: ${sentence}`)
  if (row.inclMm <= row.overMm) {
    throw refuse('inclMm', `the range of bores runs upwards: over ${row.overMm} to ${row.inclMm} mm does not.`)
  }
  if (nmFromUm(row.reductionMinUm) <= 0) {
    throw refuse('reductionMinUm', 'the least reduction has to be a nanometre (0.001 µm) or more.')
  }
  if (nmFromUm(row.reductionMaxUm) <= nmFromUm(row.reductionMinUm)) {
    throw refuse('reductionMaxUm', 'the most reduction has to be larger than the least.')
  }
  if ((row.driveUpMinMm === null) !== (row.driveUpMaxMm === null)) {
    throw refuse('driveUpMaxMm', 'give both limits of the drive-up, or none.')
  }
  if (row.driveUpMinMm !== null && row.driveUpMaxMm !== null && row.driveUpMaxMm < row.driveUpMinMm) {
    throw refuse('driveUpMaxMm', 'the most drive-up has to be as large as the least, or larger.')
  }
}
