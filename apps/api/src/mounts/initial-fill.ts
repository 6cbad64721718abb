import type { Sheet } from './mounts.store.ts'

/** The first fill that a mount sheet tells of, as a greasing; null where no grease was weighed. */
export function initialFillOf(sheet: Pick<Sheet, 'greaseId' | 'greaseBearingG' | 'greaseHousingG'>) {
  const doseG = (sheet.greaseBearingG ?? 0) + (sheet.greaseHousingG ?? 0)
  return doseG > 0 ? { greaseId: sheet.greaseId, doseG, meterShowsHours: null, note: '' } : null
}
