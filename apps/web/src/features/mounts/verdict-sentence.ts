import type { Judgement } from '@shaftbook/contract/judgement'
import { formatLength, formatLengthRange, type LengthUnit } from '../../lib/length-units.ts'

interface Judged extends Pick<Judgement, 'verdict' | 'reductionUm'> {
  band: { minUm: number; maxUm: number } | null
}

/**
 * The verdict as one sentence with its numbers: what was taken out, against which band, and how far off; null where no
 * reduction was held against a band.
 */
export function verdictSentence({ verdict, reductionUm, band: limits }: Judged, unit: LengthUnit): string | null {
  if (verdict === null || reductionUm === null || !limits) return null
  const { minUm, maxUm } = limits
  const say = (um: number): string => formatLength(um, unit)
  const band = `the band is ${formatLengthRange(minUm, maxUm, unit)}`
  if (reductionUm < 0) return `The clearance grew by ${say(-reductionUm)} instead of shrinking; ${band}.`
  const taken = `${say(reductionUm)} of clearance is taken out`
  if (verdict === 'under') return `${taken}, ${say(minUm - reductionUm)} too little; ${band}.`
  if (verdict === 'over') return `${taken}, ${say(reductionUm - maxUm)} too much; ${band}.`
  if (verdict === 'not-proven') return `${taken}; ${band}, and this gauge cannot tell whether it was met.`
  return `${taken}; ${band}.`
}
