import { judgeAtLeast, judgeBetween, type AcceptanceRule, type BandVerdict, type LimitVerdict } from './acceptance.ts'
import { requireBand, type Band, type ResidualMinimum } from './band.ts'
import { requireClearance } from './clearance-text.ts'
import { formula, type Sourced } from './source.ts'
import { defaultBudget, defaultGuardFactor, type UncertaintyBudget } from './uncertainty.ts'
import { formatLength, toNanometres } from './units.ts'

/** Version of the formulas, stored with every verdict; a new one never rewrites an old verdict. */
export const formulaVersion = 'bearing-1'

/** What a site decides about verdicts. */
export interface VerdictSettings {
  reductionRule: AcceptanceRule
  residualRule: AcceptanceRule
  classRule: AcceptanceRule
  /** U = guardFactor · u. 2 by ISO 14253-1; 1.65 for a one-sided 95 % conformance probability. */
  guardFactor: number
  budget: UncertaintyBudget
}

export const defaultVerdictSettings: Readonly<VerdictSettings> = Object.freeze({
  reductionRule: 'simple',
  residualRule: 'proven',
  classRule: 'simple',
  guardFactor: defaultGuardFactor,
  budget: defaultBudget,
})

export interface ReductionVerdict extends Sourced {
  verdict: BandVerdict
  acceptance: AcceptanceRule
  reductionUm: number
  minUm: number
  maxUm: number
  /** Expanded uncertainty U of the reduction. */
  expandedUm: number
  /** The verdict holds by the proven rule too. */
  proven: boolean
  /** The band is narrower than 2 U: no reading of this gauge can prove that it was met. */
  gaugeCannotProveBand: boolean
  /** Width of the band over 2 U, 2 decimals; null when U is nothing. */
  bandToGaugeRatio: number | null
}

/** Judges a reduction against its band, all in µm, by the site's acceptance rule (ISO 14253-1). R-RED, R-U. */
export function judgeReduction(
  valueUm: number,
  band: Pick<Band, 'minUm' | 'maxUm' | 'source' | 'cautions'>,
  expandedUm: number,
  acceptance: AcceptanceRule,
): ReductionVerdict {
  requireBand(band)
  const verdict = judgeBetween(valueUm, band, expandedUm, acceptance)
  const proven = judgeBetween(valueUm, band, expandedUm, 'proven') === verdict && verdict !== 'not-proven'
  const width = toNanometres(band.maxUm, 'um') - toNanometres(band.minUm, 'um')
  const twiceU = 2 * toNanometres(expandedUm, 'um')
  const ratio = twiceU === 0 ? null : Math.round((width / twiceU) * 100) / 100
  const cannot = width < twiceU
  return {
    verdict,
    acceptance,
    reductionUm: valueUm,
    minUm: band.minUm,
    maxUm: band.maxUm,
    expandedUm,
    proven,
    gaugeCannotProveBand: cannot,
    bandToGaugeRatio: ratio,
    source: band.source,
    rule: 'R-U',
    cautions: [...band.cautions, ...reductionCautions(valueUm, verdict, proven, cannot ? ratio : null)],
  }
}

export type ResidualVerdict =
  | (Sourced & {
      verdict: LimitVerdict
      acceptance: AcceptanceRule
      mountedUm: number
      minUm: number
      expandedUm: number
      /** The verdict holds by the proven rule too. */
      proven: boolean
    })
  | (Sourced & { verdict: 'no-minimum'; mountedUm: number })

/** Judges the mounted clearance against the residual minimum, in µm (ISO 14253-1). Without one: no-minimum. R-RES, R-U. */
export function judgeResidual(
  mountedUm: number,
  minimum: ResidualMinimum | null,
  expandedUm: number,
  acceptance: AcceptanceRule,
): ResidualVerdict {
  if (!minimum) {
    const cautions = ['There is no residual minimum for this bearing: the engineer has to give one.']
    return { verdict: 'no-minimum', mountedUm, source: formula('no residual minimum'), rule: 'R-RES', cautions }
  }
  const minUm = requireClearance(minimum.minUm, 'residualMinimum')
  const verdict = judgeAtLeast(mountedUm, minUm, expandedUm, acceptance)
  const proven = judgeAtLeast(mountedUm, minUm, expandedUm, 'proven') === verdict && verdict !== 'not-proven'
  const { source } = minimum
  const cautions = [...minimum.cautions, ...residualCautions(mountedUm, minUm, verdict, proven)]
  return { verdict, acceptance, mountedUm, minUm, expandedUm, proven, source, rule: 'R-U', cautions }
}

function reductionCautions(
  valueUm: number,
  verdict: BandVerdict,
  proven: boolean,
  cannotRatio: number | null,
): string[] {
  const cautions: string[] = []
  if (toNanometres(valueUm, 'um') < 0) {
    cautions.push('The clearance is larger after mounting than before: before and after may be swapped.')
  }
  if (cannotRatio !== null) {
    cautions.push(
      `This gauge cannot prove this band (band over 2U is ${cannotRatio}): take more readings, use a better gauge, or check the drive-up from a verified zero.`,
    )
  } else if (!proven && verdict !== 'not-proven') {
    cautions.push('The reduction is nearer to a limit than the uncertainty of the gauge: as read, not proven.')
  }
  if (verdict === 'not-proven') cautions.push('The gauge can’t tell whether the reduction is inside the band.')
  return cautions
}

function residualCautions(mountedUm: number, minUm: number, verdict: LimitVerdict, proven: boolean): string[] {
  if (verdict === 'enough') return proven ? [] : ['The mounted clearance is enough as read, not proven.']
  const shown = `${formatLength(mountedUm, 'um', { decimals: 1 })} against at least ${formatLength(minUm, 'um')}`
  if (verdict === 'too-small') return [`The mounted clearance is too small: ${shown}.`]
  return [`The gauge can’t tell whether the mounted clearance is enough: ${shown}.`]
}
