import { clearanceRange } from '@shaftbook/bearing/clearance'
import { travelForReductionMm } from '@shaftbook/bearing/thick-ring'
import type { PositionBand } from '@shaftbook/contract/band-of-position'
import type { Judgement } from '@shaftbook/contract/judgement'
import type { BearingTypeRow } from '../builders/catalogue-rows.ts'
import type { Random } from '../random.ts'
import { judgeFelt, type FeltReading, type Measured } from './judgement.ts'
import type { MountOutcome } from './truth.ts'

/** How a mount is meant to end up; `not-proven` is judged by the rule that a reduction has to be proven. */
export type Intent = Exclude<MountOutcome, 'unjudged'> | 'not-proven'

const mostTries = 500

/**
 * Feeler readings of a mount that ends up as meant: a bearing from its class, driven up somewhere, felt with blades 10 µm
 * apart, drawn again until the judgement of the readings is the one that is meant.
 */
export function feelMount(
  random: Random,
  bands: PositionBand,
  type: BearingTypeRow,
  intent: Intent,
  readingsPerRow: number,
): { measured: Measured; judgement: Judgement } {
  for (let tried = 0; tried < mostTries; tried++) {
    const measured = feelOnce(random, bands, type, intent, readingsPerRow)
    const judgement = judgeFelt(type, bands, measured, intent === 'not-proven')
    if (endedUp(judgement) === intent) return { measured, judgement }
  }
  throw new Error(`No readings of ${type.designation} end up ${intent} in ${mostTries} tries.`)
}

const sideChecks = ['R-ROW', 'R-CL2', 'R-RATIO']

function endedUp({ verdict, residual, checks }: Judgement): Intent | 'unclear' {
  if (checks.some(({ rule, outcome }) => sideChecks.includes(rule) && outcome !== 'pass')) return 'unclear'
  if (verdict === 'under' || verdict === 'over') return residual === 'too-small' ? 'unclear' : verdict
  if (verdict === 'inside' && residual === 'too-small') return 'thin'
  if (residual !== 'enough') return 'unclear'
  return verdict === 'inside' ? 'good' : (verdict ?? 'unclear')
}

function feelOnce(
  random: Random,
  bands: PositionBand,
  type: BearingTypeRow,
  intent: Intent,
  readingsPerRow: number,
): Measured {
  const { boreMm, outsideDiameterMm, clearanceClass } = type
  const found = clearanceRange(boreMm, 'tapered', clearanceClass)
  if (!found.found) throw new Error(found.reason)
  if (bands.band === null) throw new Error(`There is no band for ${type.designation}.`)
  const { minUm, maxUm } = bands.band
  const inClass = intent === 'thin' ? random.uniform(0.02, 0.2) : random.uniform(0.15, 0.9)
  const benchUm = found.range.minUm + inClass * (found.range.maxUm - found.range.minUm)
  const reductionUm = {
    good: random.normal((minUm + maxUm) / 2, (maxUm - minUm) / 5),
    'not-proven': random.normal((minUm + maxUm) / 2, (maxUm - minUm) / 6),
    under: minUm - random.uniform(4, 18),
    over: maxUm + random.uniform(5, 22),
    thin: maxUm - random.uniform(0, 8),
  }[intent]
  const travelMm = travelForReductionMm(reductionUm, { boreMm, outsideDiameterMm, taper: '1:12' })
  return {
    readings: [
      ...feel(random, 'bench', benchUm, readingsPerRow),
      ...feel(random, 'mounted', benchUm - reductionUm, readingsPerRow),
    ],
    driveUpMm: Math.round(travelMm * random.normal(1.02, 0.03) * 50) / 50,
  }
}

/** The largest blade that passes at each place, in µm: a step of 10 below what is there, give or take the hand. */
function feel(random: Random, moment: FeltReading['moment'], trueUm: number, readingsPerRow: number): FeltReading[] {
  const rowOffsetUm = random.normal(0, 2)
  return (['A', 'B'] as const).flatMap((row) =>
    Array.from({ length: readingsPerRow }, () => {
      const thereUm = trueUm + (row === 'A' ? rowOffsetUm : -rowOffsetUm) + random.normal(3, 4)
      return { moment, row, clearanceUm: Math.max(10, Math.floor(thereUm / 10) * 10) }
    }),
  )
}
