import { chooseBand, residualMinimum, type Band as ChosenBand, type MakerChart } from '@shaftbook/bearing/band'
import type { Band } from '@shaftbook/contract/mounts'
import type { bearingTypes, positions } from '@shaftbook/contract/register-tables'
import type { z } from 'zod'

type Position = z.output<typeof positions.Row>
type BearingType = z.output<typeof bearingTypes.Row>

/** The band and the residual minimum that a mount of this type would be judged by at this position. */
export function bandOf(
  position: Position,
  type: BearingType,
  chart: MakerChart[],
): { band: Band | null; residualMinUm: number | null } {
  const { ownReductionMinUm: minUm, ownReductionMaxUm: maxUm, ownBandSource } = position
  const query = {
    boreMm: type.boreMm,
    taper: type.taper,
    clearanceClass: type.clearanceClass,
    ownBand: minUm !== null && maxUm !== null ? { title: ownBandSource ?? undefined, minUm, maxUm } : null,
    ownResidualMinUm: position.ownResidualMinUm,
    chart: chart.find((candidate) => candidate.taper === type.taper) ?? null,
  }
  const band = chooseBand(query)
  const residual = residualMinimum(query)
  return { band: band.found ? shown(band) : null, residualMinUm: residual.found ? residual.minUm : null }
}

function shown({ minUm, maxUm, source }: ChosenBand): Band {
  const { title, edition, row, certainty } = source
  const kind = source.kind as Band['source']['kind']
  return { minUm, maxUm, source: { kind, title, edition, row, certainty: certainty ?? 'as entered by the site' } }
}
