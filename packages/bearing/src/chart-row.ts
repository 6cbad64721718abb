import type { Taper } from '@shaftbook/standards/table'
import { requireBand } from './band.ts'
import { checkRatio } from './drive-up.ts'
import { InputError, requireWithin } from './input-error.ts'
import type { ChartRow } from './maker-chart.ts'
import { formula, type Sourced } from './source.ts'
import { formatLength, toUm } from './units.ts'

export type TypedChartRow = Omit<ChartRow, 'residualMinUm' | 'certainty'>

export interface ChartRowCheck extends Sourced {
  verdict: 'plausible' | 'ask'
  /** What to ask, null where nothing is odd. */
  sentence: string | null
  /** Bands that may have been meant. */
  suggestions: { minUm: number; maxUm: number; label: string }[]
  /** Middle of the band over middle of the bores, in thousandths. */
  perMille: number
}

/** Reduction over bore of every guide known, with room on both sides: in thousandths. */
const usual = { low: 0.25, high: 1.2 }

/** What a slip does to a number: the value has to be multiplied by it. */
const slips = [
  { by: 1000, label: 'millimetres typed as µm' },
  { by: 25.4, label: 'thou typed as µm' },
  { by: 0.1, label: 'a decimal mark one place too far' },
  { by: 10, label: 'a decimal mark one place too near' },
  { by: 1 / 25.4, label: 'µm typed as thou' },
  { by: 0.001, label: 'µm typed as millimetres' },
]

/**
 * Plausibility of a row of a maker's chart as a site typed it: the band lies between 0.25 and 1.2 thousandths of the bore
 * (every guide does), and drive-up over reduction is possible. Otherwise it asks, with what may have been meant. R-UNIT, R-RATIO.
 */
export function checkChartRow(row: TypedChartRow, taper: Taper = '1:12'): ChartRowCheck {
  requireWithin(row.overMm, 'overMm', 0, 2000, 'mm')
  requireWithin(row.inclMm, 'inclMm', 1, 2000, 'mm')
  if (row.overMm >= row.inclMm)
    throw new InputError('conflict', 'inclMm', 'A row runs from a smaller bore to a larger one.')
  const middleMm = (row.overMm + row.inclMm) / 2
  const plausible = (um: number): boolean => um >= usual.low * middleMm && um <= usual.high * middleMm
  const { reductionMinUm: min, reductionMaxUm: max } = row
  requireWithin(min, 'reductionMinUm', 0.000_1, 2_000_000, 'µm')
  requireWithin(max, 'reductionMaxUm', 0.000_1, 2_000_000, 'µm')
  const sourced = { source: formula('reduction over bore of the known guides'), rule: 'R-UNIT, R-RATIO' }
  const perMille = (min + max) / 2 / middleMm
  if (!plausible(min) || !plausible(max)) {
    const suggestions = slips
      .filter(({ by }) => plausible(min * by) && plausible(max * by))
      .map(({ by, label }) => meant(toUm(min * by, 'um'), toUm(max * by, 'um'), label))
    const sentence = `${min} to ${max} µm is unusual for bores of ${row.overMm} to ${row.inclMm} mm. Was another unit meant?`
    return { ...sourced, verdict: 'ask', sentence, suggestions, perMille, cautions: [sentence] }
  }
  requireBand({ minUm: min, maxUm: max })
  const odd = ratioCautions(row, taper, middleMm)
  const verdict = odd.length > 0 ? 'ask' : 'plausible'
  return { ...sourced, verdict, sentence: odd[0] ?? null, suggestions: [], perMille, cautions: odd }
}

function meant(minUm: number, maxUm: number, label: string): ChartRowCheck['suggestions'][number] {
  const band = `${formatLength(minUm, 'um', { withUnit: false })} to ${formatLength(maxUm, 'um')}`
  return { minUm, maxUm, label: `${band} (${label})` }
}

function ratioCautions(row: TypedChartRow, taper: Taper, boreMm: number): string[] {
  const pairs = [
    [row.driveUpMinMm, row.reductionMinUm],
    [row.driveUpMaxMm, row.reductionMaxUm],
  ] as const
  const checks = pairs.map(([driveUpMm, reductionUm]) =>
    checkRatio({ driveUpMm: driveUpMm ?? null, reductionUm, taper, boreMm }),
  )
  const wrong = checks.find(({ verdict }) => verdict === 'too-low' || verdict === 'too-high')
  if (!wrong) return []
  const wanted = `${wrong.lowest} to ${Math.round(wrong.highest)}`
  return [`Drive-up over reduction is ${wrong.ratio}, where ${wanted} is possible: check units, taper and columns.`]
}
