import { checkDose } from '@shaftbook/bearing/grease'
import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import { takesGrease, type NewGreasing } from '@shaftbook/contract/greasing'
import type { z } from 'zod'
import { parseNumber } from '../../lib/length-units.ts'
import { plantInstant } from '../../lib/plant-time.ts'
import { taskActs } from './task-acts.ts'

/** Work at a position as it is typed: a greasing, a check, an oil change, a turning. */
export interface GreasingEntry {
  greasedAt: string
  greaseId: string
  doseG: string
  meterShowsHours: string
  /** How a check ended, in the words of its task. */
  finding: string
  note: string
}

export type EntryFaults = Partial<Record<keyof GreasingEntry | 'correctionReason', string>>

interface EntryAbout {
  readonly task: GreaseTask
  readonly timeZone: string
  readonly now: Date
  readonly needsGrease: boolean
  /** A correction says how a check ended in its note, which is there already. */
  readonly corrects?: boolean
}

const smallestDoseG = 0.1
const largestDoseG = 20_000
const largestHours = 1_000_000

/** What has to be put right before it can be sent. */
export function entryFaults(entry: GreasingEntry, about: EntryAbout): EntryFaults {
  const at = plantInstant(entry.greasedAt, about.timeZone)
  const faults: EntryFaults = {}
  if (at === undefined) faults.greasedAt = 'Enter the day and the time.'
  else if (Date.parse(at) > about.now.getTime() + 60_000)
    faults.greasedAt = 'This lies in the future: check day and time.'
  const hours = parseNumber(entry.meterShowsHours)
  if (entry.meterShowsHours.trim() !== '' && (hours === undefined || hours < 0 || hours > largestHours))
    faults.meterShowsHours = 'Enter the hours as the meter shows them.'
  if (taskActs[about.task].findings.length > 0 && !about.corrects && entry.finding === '')
    faults.finding = 'Say how it stands.'
  return takesGrease(about.task) ? { ...faults, ...doseFaults(entry, about.needsGrease) } : faults
}

function doseFaults(entry: GreasingEntry, needsGrease: boolean): EntryFaults {
  const faults: EntryFaults = {}
  const dose = parseNumber(entry.doseG)
  if (dose === undefined) faults.doseG = 'Enter the dose in grams, like 12 or 12,5.'
  else if (dose < smallestDoseG || dose > largestDoseG)
    faults.doseG = `A dose is ${smallestDoseG} to ${largestDoseG} g: check the number.`
  if (needsGrease && entry.greaseId === '') faults.greaseId = 'Say which grease went in: there is no plan.'
  return faults
}

/** The entry as the service takes it; it has no faults by now. */
export function entryBody(
  entry: GreasingEntry,
  about: Pick<EntryAbout, 'task' | 'timeZone'>,
): Omit<z.input<typeof NewGreasing>, 'id' | 'positionId' | 'task'> {
  const greased = takesGrease(about.task)
  return {
    greasedAt: plantInstant(entry.greasedAt, about.timeZone) ?? '',
    greaseId: greased && entry.greaseId !== '' ? entry.greaseId : null,
    doseG: greased ? (parseNumber(entry.doseG) ?? 0) : null,
    meterShowsHours: parseNumber(entry.meterShowsHours) ?? null,
    note: [entry.finding && `${entry.finding}.`, entry.note.trim()].filter((part) => part !== '').join(' '),
  }
}

/** What a dose calls for beside its plan (R-OVER); nothing where it is right, or not a dose yet. */
export function doseRemarks(text: string, plannedG: number | null): string[] {
  const dose = parseNumber(text)
  if (plannedG === null || dose === undefined || dose < smallestDoseG || dose > largestDoseG) return []
  return checkDose(dose, plannedG).cautions
}
