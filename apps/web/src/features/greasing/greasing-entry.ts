import { checkDose } from '@shaftbook/bearing/grease'
import type { NewGreasing } from '@shaftbook/contract/greasing'
import type { z } from 'zod'
import { parseNumber } from '../../lib/length-units.ts'
import { plantInstant } from '../../lib/plant-time.ts'

/** A greasing as it is typed. */
export interface GreasingEntry {
  greasedAt: string
  greaseId: string
  doseG: string
  meterShowsHours: string
  note: string
}

export type EntryFaults = Partial<Record<keyof GreasingEntry | 'correctionReason', string>>

const smallestDoseG = 0.1
const largestDoseG = 20_000
const largestHours = 1_000_000

/** What has to be put right before it can be sent. */
export function entryFaults(
  entry: GreasingEntry,
  about: { timeZone: string; now: Date; needsGrease: boolean },
): EntryFaults {
  const at = plantInstant(entry.greasedAt, about.timeZone)
  const faults: EntryFaults = {}
  if (at === undefined) faults.greasedAt = 'Enter the day and the time.'
  else if (Date.parse(at) > about.now.getTime() + 60_000)
    faults.greasedAt = 'This lies in the future: check day and time.'
  const dose = parseNumber(entry.doseG)
  if (dose === undefined) faults.doseG = 'Enter the dose in grams, like 12 or 12,5.'
  else if (dose < smallestDoseG || dose > largestDoseG)
    faults.doseG = `A dose is ${smallestDoseG} to ${largestDoseG} g: check the number.`
  const hours = parseNumber(entry.meterShowsHours)
  if (entry.meterShowsHours.trim() !== '' && (hours === undefined || hours < 0 || hours > largestHours))
    faults.meterShowsHours = 'Enter the hours as the meter shows them.'
  if (about.needsGrease && entry.greaseId === '') faults.greaseId = 'Say which grease went in: there is no plan.'
  return faults
}

/** The entry as the service takes it; it has no faults by now. */
export function entryBody(
  entry: GreasingEntry,
  timeZone: string,
): Omit<z.input<typeof NewGreasing>, 'id' | 'positionId'> {
  return {
    greasedAt: plantInstant(entry.greasedAt, timeZone) ?? '',
    greaseId: entry.greaseId === '' ? null : entry.greaseId,
    doseG: parseNumber(entry.doseG) ?? 0,
    meterShowsHours: parseNumber(entry.meterShowsHours) ?? null,
    note: entry.note.trim(),
  }
}

/** What a dose calls for beside its plan (R-OVER); nothing where it is right, or not a dose yet. */
export function doseRemarks(text: string, plannedG: number | null): string[] {
  const dose = parseNumber(text)
  if (plannedG === null || dose === undefined || dose < smallestDoseG || dose > largestDoseG) return []
  return checkDose(dose, plannedG).cautions
}
