import { checkDose, gunStrokes } from '@shaftbook/bearing/grease'

/** Whole strokes that give at least the planned dose, both in g; null where no dose is planned. R-DOSE. */
export function plannedStrokes(doseG: number | null, gramsPerStroke: number): number | null {
  return doseG === null ? null : gunStrokes(doseG, gramsPerStroke).strokes
}

/** What the strokes give in g, to the milligram. */
export function strokesG(strokes: number, gramsPerStroke: number): number {
  return Math.round(strokes * gramsPerStroke * 1000) / 1000
}

/** What has to be said yes to before so much counts, as sentences; none up to 1.5 times the plan. R-OVER. */
export function overdoseCautions(givenG: number, plannedG: number | null): string[] {
  if (plannedG === null || givenG > 20_000) return []
  const { verdict, cautions } = checkDose(givenG, plannedG)
  return verdict === 'over' || verdict === 'far-over' ? cautions : []
}
