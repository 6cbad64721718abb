import type { NewObservation } from '@shaftbook/contract/observations'
import type { z } from 'zod'
import { parseNumber } from '../../lib/length-units.ts'

/** What was noticed at the work besides, as it is typed; all empty where nothing was. */
export interface SeenEntry {
  temperatureC: string
  vibrationMmS: string
  zone: '' | 'A' | 'B' | 'C' | 'D'
}

export const nothingSeen: SeenEntry = { temperatureC: '', vibrationMmS: '', zone: '' }

export type SeenFaults = Partial<Record<keyof SeenEntry, string>>

/** The zones of ISO 20816, as the person reads them from the table of the machine. */
export const zoneWords = {
  '': 'Not read',
  A: 'A: as of a new machine',
  B: 'B: for unrestricted long-term operation',
  C: 'C: for a limited time only',
  D: 'D: can do damage',
} as const

/** What has to be put right before it can be sent. */
export function seenFaults({ temperatureC, vibrationMmS }: SeenEntry): SeenFaults {
  const faults: SeenFaults = {}
  if (!fits(temperatureC, -60, 250)) faults.temperatureC = 'Enter −60 to 250 °C, or nothing.'
  if (!fits(vibrationMmS, 0, 500)) faults.vibrationMmS = 'Enter 0 to 500 mm/s, or nothing.'
  return faults
}

function fits(text: string, min: number, max: number): boolean {
  if (text.trim() === '') return true
  const value = parseNumber(text)
  return value !== undefined && value >= min && value <= max
}

type ObservationBody = z.input<typeof NewObservation>

/** The observation as the service takes it, or null where nothing was noticed; it has no faults by now. */
export function seenBody(
  entry: SeenEntry,
  about: Pick<ObservationBody, 'id' | 'positionId' | 'observedAt'> & { greasingId: string },
): ObservationBody | null {
  const temperatureC = parseNumber(entry.temperatureC) ?? null
  const vibrationMmS = parseNumber(entry.vibrationMmS) ?? null
  const zone = entry.zone === '' ? null : entry.zone
  if (temperatureC === null && vibrationMmS === null && zone === null) return null
  return { ...about, temperatureC, vibrationMmS, zone }
}
