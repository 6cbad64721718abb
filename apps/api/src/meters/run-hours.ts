import type { SiteTx } from '../db/database.ts'
import { fieldError } from '../domain-error.ts'
import { addReading, findNeighbours, findUsageReadings } from './meters.store.ts'
import { positionsOfMachine, type Place } from './place.ts'
import { replaceReading } from './replace-reading.ts'
import { totalHoursOf, type Neighbours } from './total-hours.ts'
import { msPerDay, usageDays, usageOf } from './usage.ts'
import { dayOf, type Work } from './work.ts'

/** The machine's hours at an event, and where they come from. */
export interface RunHoursAt {
  readonly totalHours: number | null
  readonly source: 'meter' | 'estimate' | 'none'
}

/** What was entered about the hours at an event. */
export interface HoursEntry {
  readonly meterShowsHours: number | null
  readonly noHoursReason: string | null
}

/** Keeps what the meter shows at an event that can't do without hours, or else the reason why there are none. */
export async function hoursOrReason(work: Work, place: Place, at: Date, entry: HoursEntry): Promise<RunHoursAt> {
  if (entry.meterShowsHours !== null) return await readMeter(work, place, at, entry.meterShowsHours)
  if (entry.noHoursReason === null) {
    throw fieldError(
      'hours-or-reason',
      'meterShowsHours',
      'Enter what the hour meter shows, or say why you have no reading.',
    )
  }
  return { totalHours: null, source: 'none' }
}

export interface CorrectedHours {
  /** When the event was said to have been, and the machine's hours then. */
  readonly wrong: { readonly at: Date; readonly totalHours: number | null }
  readonly at: Date
  readonly entry: HoursEntry
  readonly correctionReason: string
}

/** Keeps the right hours of an event that was signed with wrong ones: the reading that it went by is corrected with it. */
export async function correctHours(work: Work, place: Place, corrected: CorrectedHours): Promise<RunHoursAt> {
  const { wrong, at, entry, correctionReason } = corrected
  const { meterShowsHours: shownHours } = entry
  if (shownHours === null || !place.meter || wrong.totalHours === null) {
    return await hoursOrReason(work, place, at, entry)
  }
  const { before } = await findNeighbours(work.tx, place.meter.id, wrong.at)
  const wentBy = before?.kind === 'reading' && before.readAt.getTime() === wrong.at.getTime()
  const same = before?.shownHours === shownHours && at.getTime() === wrong.at.getTime()
  if (!wentBy || same) return await readMeter(work, place, at, shownHours)
  const right = { readAt: at, shownHours, newMeterShowsHours: null, correctionReason, path: 'meterShowsHours' }
  const totalHours = await replaceReading(work, { ...place.meter, machineId: place.machineId }, before, right)
  return { totalHours, source: 'meter' }
}

/** The hours at an event that goes without a reading too: between two readings of the meter they are estimated. */
export async function hoursIfKnown(work: Work, place: Place, at: Date, shown: number | null): Promise<RunHoursAt> {
  if (shown !== null) return await readMeter(work, place, at, shown)
  if (!place.meter) return { totalHours: null, source: 'none' }
  return between(at, await findNeighbours(work.tx, place.meter.id, at))
}

function between(at: Date, { before, after }: Neighbours): RunHoursAt {
  if (!before || !after) return { totalHours: null, source: 'none' }
  const share = (at.getTime() - before.readAt.getTime()) / (after.readAt.getTime() - before.readAt.getTime())
  const totalHours = before.totalHours + share * (after.totalHours - before.totalHours)
  return { totalHours: Math.round(totalHours * 10) / 10, source: 'estimate' }
}

/** Stores what the meter of the machine shows; the same reading of the same moment is stored once. */
async function readMeter(work: Work, place: Place, at: Date, shownHours: number): Promise<RunHoursAt> {
  const path = 'meterShowsHours'
  if (!place.meter) {
    const message =
      'No hour meter is registered for this machine: leave the reading empty, or ask the engineer to register the meter.'
    throw fieldError('not-allowed-here', path, message)
  }
  const { id: meterId, rolloverAtHours } = place.meter
  const neighbours = await findNeighbours(work.tx, meterId, at)
  const { before } = neighbours
  if (before?.kind === 'reading' && before.readAt.getTime() === at.getTime() && before.shownHours === shownHours) {
    return { totalHours: before.totalHours, source: 'meter' }
  }
  const entry = { readAt: at, shownHours, newMeterShowsHours: null }
  const totalHours = totalHoursOf(entry, neighbours, rolloverAtHours, { path, day: (moment) => dayOf(work, moment) })
  await addReading(work.tx, { ...entry, meterId, kind: 'reading', totalHours, readBy: work.personId })
  return { totalHours, source: 'meter' }
}

/** The positions whose due dates an event moves: with a new reading of the meter, all of the machine. */
export async function positionsMoved(tx: SiteTx, place: Place, hours: RunHoursAt): Promise<string[]> {
  if (hours.source !== 'meter') return [place.positionId]
  return [...new Set([place.positionId, ...(await positionsOfMachine(tx, place.machineId))])]
}

/** Average running hours a day up to a moment: by the meter, else what the register says of the machine. R-CAL. */
export async function usageBefore(work: Work, place: Place, at: Date): Promise<number> {
  if (!place.meter) return place.hoursPerDay
  const from = new Date(at.getTime() - usageDays * msPerDay)
  const { first, last } = await findUsageReadings(work.tx, place.meter.id, from, at)
  return usageOf(first, last, place.hoursPerDay, (moment) => dayOf(work, moment))
}
