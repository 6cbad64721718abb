import { bandOfPosition, presentBand, type BandBearing, type BandPosition } from '@shaftbook/contract/band-of-position'
import type { ChartTakeover, ChartTakeoverPosition, MakerChart } from '@shaftbook/contract/maker-charts'
import { holdMachinesOfPositions } from '../bookkeeping/hold.ts'
import type { Context } from '../context.ts'
import type { Scope, SiteTx } from '../db/database.ts'
import { umFromNm } from '../db/units.ts'
import { DomainError, fieldError, notFound, versionStale } from '../domain-error.ts'
import { findChart } from './charts.store.ts'

const noun = 'reduction chart'

/** The positions that go by the edition before a chart, with their bands by either. */
export async function readTakeover({ db }: Context, scope: Scope, id: string): Promise<ChartTakeover> {
  return await db.withSite(scope, async (tx) => {
    const { before, after } = await findEditions(tx, id)
    const rows = await findPositions(tx, before.id)
    return {
      from: { id: before.id, document: before.document, edition: before.edition },
      positions: rows.map((row) => compared(row, before, after)),
    }
  })
}

/**
 * Moves every position of the edition before to this chart, in one act: as many as were shown, by the rows that were
 * shown. Records keep the band that they were judged by.
 */
export async function takeOver(
  { db }: Context,
  scope: Scope,
  wanted: { id: string; version: number; positionCount: number },
): Promise<MakerChart> {
  const { id, version, positionCount } = wanted
  return await db.withSite(scope, async (tx) => {
    const { before, after } = await findEditions(tx, id)
    if (after.version !== version) throw versionStale(noun, version)
    const found = await findPositions(tx, before.id)
    await holdMachinesOfPositions(
      tx,
      found.map((row) => row.id),
    )
    const moved = await tx.prisma.position.updateMany({
      where: { siteId: scope.siteId, makerChartId: before.id, retiredAt: null },
      data: { makerChartId: id },
    })
    if (moved.count !== positionCount) throw countChanged(positionCount, moved.count)
    return (await findChart(tx, id)) as MakerChart
  })
}

function countChanged(shown: number, now: number): DomainError {
  const message = `${shown} positions were shown, ${now} go by the edition before now. Nothing was moved: look at the list again.`
  return fieldError('version-stale', 'positionCount', message)
}

async function findEditions(tx: SiteTx, id: string): Promise<{ before: MakerChart; after: MakerChart }> {
  const after = await findChart(tx, id)
  if (!after) throw notFound(noun)
  const before = after.replacesId === null ? undefined : await findChart(tx, after.replacesId)
  if (!before) throw new DomainError('not-found', 'This chart takes over from no other one.')
  return { before, after }
}

interface PositionRow extends Pick<BandPosition, 'seat' | 'ownBandSource'> {
  readonly id: string
  readonly tag: string
  readonly ownReductionMinNm: number | null
  readonly ownReductionMaxNm: number | null
  readonly ownResidualMinNm: number | null
  readonly bearing: BandBearing & { designation: string }
}

async function findPositions({ sql, scope }: SiteTx, chartId: string): Promise<PositionRow[]> {
  return await sql<PositionRow>(
    `select p.id, p.tag, p.seat, p.own_band_source as "ownBandSource", p.own_reduction_min_nm as "ownReductionMinNm",
       p.own_reduction_max_nm as "ownReductionMaxNm", p.own_residual_min_nm as "ownResidualMinNm",
       jsonb_build_object('designation', t.designation, 'kind', t.kind, 'series', t.series, 'boreMm', t.bore_mm,
         'taper', t.taper, 'clearanceClass', t.clearance_class) as bearing
     from position p
     join bearing_type t on t.site_id = p.site_id and t.id = p.bearing_type_id
     where p.site_id = $1::uuid and p.maker_chart_id = $2::uuid and p.retired_at is null
     order by p.tag`,
    [scope.siteId, chartId],
  )
}

function compared(row: PositionRow, before: MakerChart, after: MakerChart): ChartTakeoverPosition {
  const position = {
    seat: row.seat,
    ownBandSource: row.ownBandSource,
    ownReductionMinUm: umFromNm(row.ownReductionMinNm),
    ownReductionMaxUm: umFromNm(row.ownReductionMaxNm),
    ownResidualMinUm: umFromNm(row.ownResidualMinNm),
  }
  const [old, next] = [before, after].map((chart) => bandOfPosition(position, row.bearing, chart))
  const bandOf = (found: typeof old) => (found?.band ? presentBand(found.band) : null)
  const limits = (found: typeof old) => [found?.band?.minUm, found?.band?.maxUm, found?.residualMinimum?.minUm]
  return {
    id: row.id,
    tag: row.tag,
    designation: row.bearing.designation,
    before: bandOf(old),
    after: bandOf(next),
    changes: limits(old).join() !== limits(next).join(),
  }
}
