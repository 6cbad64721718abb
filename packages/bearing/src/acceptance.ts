import { toNanometres } from './units.ts'

/** simple: inside the limits as read is inside. proven: only what clears the limit by the guard band is. */
export const acceptanceRules = ['simple', 'proven'] as const
export type AcceptanceRule = (typeof acceptanceRules)[number]

export const bandVerdicts = ['inside', 'under', 'over', 'not-proven'] as const
export type BandVerdict = (typeof bandVerdicts)[number]

export const limitVerdicts = ['enough', 'too-small', 'not-proven'] as const
export type LimitVerdict = (typeof limitVerdicts)[number]

/**
 * Decision for a value between two limits, all in µm, compared in whole nanometres (ISO 14253-1, R-U). By the proven
 * rule it is inside when min + guard <= value <= max - guard, under below min - guard, over above max + guard, else not
 * proven. By the simple rule the guard is nothing, so there is always a decision.
 */
export function judgeBetween(
  valueUm: number,
  limits: { minUm: number; maxUm: number },
  guardUm: number,
  rule: AcceptanceRule,
): BandVerdict {
  const [value, min, max] = [nm(valueUm), nm(limits.minUm), nm(limits.maxUm)]
  const guard = rule === 'simple' ? 0 : nm(guardUm)
  if (value < min - guard) return 'under'
  if (value > max + guard) return 'over'
  return value >= min + guard && value <= max - guard ? 'inside' : 'not-proven'
}

/** Decision for a value that must reach a limit, in µm, compared in whole nanometres (ISO 14253-1, R-U). */
export function judgeAtLeast(valueUm: number, limitUm: number, guardUm: number, rule: AcceptanceRule): LimitVerdict {
  const guard = rule === 'simple' ? 0 : nm(guardUm)
  if (nm(valueUm) >= nm(limitUm) + guard) return 'enough'
  return nm(valueUm) < nm(limitUm) - guard ? 'too-small' : 'not-proven'
}

function nm(um: number): number {
  return toNanometres(um, 'um')
}
