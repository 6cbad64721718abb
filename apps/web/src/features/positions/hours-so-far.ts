export interface RunningStay {
  fittedAt: string
  /** Run hours (h) that the bearing had when it was registered. */
  entryAgeHours: number
  /** What the meter had counted when it was fitted, h; null where it was not read. */
  startTotalHours: number | null
  meter: { lastReadAt: string | null; lastTotalHours: number | null } | null
  /** What the register says that the machine runs. */
  hoursPerDay: number
}

export type HoursSoFar = { hours: number; source: 'meter'; readAt: string } | { hours: number; source: 'estimate' }

const dayMs = 86_400_000

/**
 * Run hours (h) of a bearing that is still fitted: by the meter up to its last reading, or else days times the machine's
 * usual hours a day, marked as an estimate (R-HOURS).
 */
export function hoursSoFar(stay: RunningStay, now: Date): HoursSoFar {
  const { meter, startTotalHours, entryAgeHours } = stay
  if (meter?.lastReadAt && meter.lastTotalHours !== null && startTotalHours !== null) {
    const ran = meter.lastTotalHours - startTotalHours
    if (ran >= 0 && meter.lastReadAt >= stay.fittedAt)
      return { hours: entryAgeHours + ran, source: 'meter', readAt: meter.lastReadAt }
  }
  const days = Math.max(0, (now.getTime() - Date.parse(stay.fittedAt)) / dayMs)
  return { hours: Math.round(entryAgeHours + days * stay.hoursPerDay), source: 'estimate' }
}
