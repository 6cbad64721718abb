import { stayHours } from '@shaftbook/bearing/run-hours'

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

/**
 * Run hours (h) of a bearing that is still fitted: by the meter up to its last reading, or else days times the machine's
 * usual hours a day, marked as an estimate (R-HOURS).
 */
export function hoursSoFar(stay: RunningStay, now: Date): HoursSoFar {
  const { meter, startTotalHours, entryAgeHours, hoursPerDay } = stay
  const fittedAt = new Date(stay.fittedAt)
  const readAt = meter?.lastReadAt && meter.lastReadAt >= stay.fittedAt ? meter.lastReadAt : null
  const endRunHours = readAt === null ? null : (meter?.lastTotalHours ?? null)
  // a bearing that was signed a moment ahead of this device's clock
  const until = now > fittedAt ? now : fittedAt
  const { runHours, hoursSource } = stayHours({
    fittedAt,
    until,
    startRunHours: startTotalHours,
    endRunHours,
    hoursPerDay,
  })
  const hours = entryAgeHours + runHours
  return hoursSource === 'meter' && readAt !== null
    ? { hours, source: 'meter', readAt }
    : { hours: Math.round(hours), source: 'estimate' }
}
