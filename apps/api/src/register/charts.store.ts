import type {
  MakerChart,
  MakerChartChange,
  MakerChartRow,
  MakerChartSummary,
  NewMakerChart,
} from '@shaftbook/contract/maker-charts'
import type { z } from 'zod'
import type { MakerChartRowModel } from '../../../../prisma/client/models.ts'
import type { SiteTx, Sql } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'
import { nmFromUm, umFromNm } from '../db/units.ts'

type Summary = z.output<typeof MakerChartSummary>
/** A chart row as the table keeps it. */
export type StoredChartRow = Omit<MakerChartRowModel, 'siteId' | 'id' | 'chartId'>
type Head = Required<Omit<z.output<typeof MakerChartChange>, 'rows'>>

export async function listCharts(
  sql: Sql,
  siteId: string,
  query: PageQuery,
): Promise<{ items: Summary[]; nextCursor: string | null }> {
  const { rows, nextCursor } = await readPage<
    Omit<Summary, 'createdAt' | 'updatedAt'> & Record<'createdAt' | 'updatedAt', Date>
  >(
    sql,
    {
      select: `c.id, c.version, c.created_at as "createdAt", c.updated_at as "updatedAt", c.maker, c.document, c.edition,
        c.page, (select count(*)::int from maker_chart_row r where r.site_id = c.site_id and r.chart_id = c.id) as "rowCount"`,
      from: 'maker_chart c',
      where: Where.atSite('c', siteId),
      sort: { column: 'c.document', type: 'text', descending: false },
      id: 'c.id',
    },
    query,
  )
  const items = rows.map((row) => ({
    ...row,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  }))
  return { items, nextCursor }
}

/**
 * Whether a signed record went by the chart. A record keeps document and edition of its band in words, and those of a
 * chart that was used never change.
 */
function usedSql(chart: string): string {
  const said = (name: string) => `m.judgement #>> '{band,source,${name}}'`
  return `exists (select from mount_record m where m.site_id = ${chart}.site_id and m.signed_at is not null
    and m.band_min_nm is not null and ${said('kind')} = 'maker-chart'
    and ${said('title')} = ${chart}.maker || ', ' || ${chart}.document and ${said('edition')} = ${chart}.edition)`
}

export async function findChart({ prisma, scope, sql }: SiteTx, id: string): Promise<MakerChart | undefined> {
  const chart = await prisma.makerChart.findUnique({
    where: { siteId_id: { siteId: scope.siteId, id } },
    include: {
      rows: { orderBy: [{ taper: 'asc' }, { overMm: 'asc' }, { clearanceClass: { sort: 'asc', nulls: 'first' } }] },
    },
  })
  if (!chart) return undefined
  const [use] = await sql<{ used: boolean; positionCount: number }>(
    `select ${usedSql('c')} as used, (select count(*)::int from position p
         where p.site_id = c.site_id and p.maker_chart_id = c.id and p.retired_at is null) as "positionCount"
     from maker_chart c where c.site_id = $1::uuid and c.id = $2::uuid`,
    [scope.siteId, id],
  )
  if (!use) throw new Error(`chart ${id} is not there`)
  return {
    ...chart,
    ...use,
    createdAt: chart.createdAt.toISOString(),
    updatedAt: chart.updatedAt.toISOString(),
    rows: chart.rows.map(presentRow),
  }
}

export async function insertChart(tx: SiteTx, chart: z.output<typeof NewMakerChart>): Promise<void> {
  const { rows, ...head } = chart
  await tx.prisma.makerChart.create({ data: { siteId: tx.scope.siteId, ...head } })
  await insertRows(tx, chart.id, rows)
}

/** True where the chart still had this version. */
export async function updateChart(
  { prisma, scope }: SiteTx,
  id: string,
  version: number,
  head: Head,
): Promise<boolean> {
  const { maker, document, edition, page } = head
  const changed = await prisma.makerChart.updateMany({
    where: { siteId: scope.siteId, id, version },
    data: { maker, document, edition, page },
  })
  return changed.count === 1
}

export async function replaceRows(tx: SiteTx, chartId: string, rows: readonly MakerChartRow[]): Promise<void> {
  await tx.prisma.makerChartRow.deleteMany({ where: { siteId: tx.scope.siteId, chartId } })
  await insertRows(tx, chartId, rows)
}

async function insertRows({ prisma, scope }: SiteTx, chartId: string, rows: readonly MakerChartRow[]): Promise<void> {
  await prisma.makerChartRow.createMany({
    data: rows.map((row) => ({ siteId: scope.siteId, chartId, ...keptRow(row) })),
  })
}

function keptRow(row: MakerChartRow) {
  return {
    id: row.id,
    overMm: row.overMm,
    inclMm: row.inclMm,
    taper: row.taper,
    clearanceClass: row.clearanceClass,
    reductionMinNm: nmFromUm(row.reductionMinUm),
    reductionMaxNm: nmFromUm(row.reductionMaxUm),
    residualMinCnNm: nmFromUm(row.residualMinCnUm),
    residualMinC3Nm: nmFromUm(row.residualMinC3Um),
    residualMinC4Nm: nmFromUm(row.residualMinC4Um),
    driveUpMinMm: row.driveUpMinMm,
    driveUpMaxMm: row.driveUpMaxMm,
  }
}

function presentRow(row: MakerChartRowModel): MakerChartRow {
  return { id: row.id, ...presentChartRow(row) }
}

/** What a stored chart row says, in the contract's units. */
export function presentChartRow(row: StoredChartRow): Omit<MakerChartRow, 'id'> {
  return {
    overMm: row.overMm,
    inclMm: row.inclMm,
    taper: row.taper as MakerChartRow['taper'],
    clearanceClass: row.clearanceClass as MakerChartRow['clearanceClass'],
    reductionMinUm: umFromNm(row.reductionMinNm),
    reductionMaxUm: umFromNm(row.reductionMaxNm),
    residualMinCnUm: umFromNm(row.residualMinCnNm),
    residualMinC3Um: umFromNm(row.residualMinC3Nm),
    residualMinC4Um: umFromNm(row.residualMinC4Nm),
    driveUpMinMm: row.driveUpMinMm,
    driveUpMaxMm: row.driveUpMaxMm,
  }
}
