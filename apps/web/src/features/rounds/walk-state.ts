import { parseNumber } from '@shaftbook/bearing/number-text'
import { takesGrease } from '@shaftbook/contract/greasing'
import type { NewWalkStop, OldGrease, StopOutcome } from '@shaftbook/contract/round-walks'
import type { Round, RoundStop } from '@shaftbook/contract/rounds'
import type { z } from 'zod'
import { overdoseCautions, strokesG } from './stop-strokes.ts'

/** What is noted at one stop, as it is typed. Its ids are made once, so that a second sending is the same request. */
export interface StopEntry {
  id: string
  greasingId: string
  strokes: string
  grams: string
  oldGrease: OldGrease | ''
  relief: 'closed' | 'open' | ''
  temperatureC: string
  note: string
  reason: string
  overdoseConfirmed: boolean
  extraReason: string
  /** Null until it is signed. */
  outcome: StopOutcome | null
  doneAt: string | null
  /** What went in, once it is signed. */
  doseG: number | null
}

/** A walk under way, as this device keeps it until it is ended and sent. */
export interface Walk {
  id: string
  finishId: string
  /** The round as it was when the walk began. */
  round: Pick<Round, 'id' | 'name' | 'stops'>
  startedAt: string
  endedAt: string | null
  /** The stop that is shown; one past the last is the summary. */
  at: number
  gunId: string | null
  /** What guns were loaded with on the way, by gun. */
  loads: Record<string, string>
  entries: Record<string, StopEntry>
  note: string
}

/** The gun in the hand, with what it is loaded with. */
export interface GunInHand {
  id: string
  name: string
  gramsPerStroke: number
  greaseId: string | null
}

export function newWalk(round: Round, newId: () => string, now: Date): Walk {
  const { id, name, stops } = round
  return {
    id: newId(),
    finishId: newId(),
    round: { id, name, stops },
    startedAt: now.toISOString(),
    endedAt: null,
    at: 0,
    gunId: null,
    loads: {},
    entries: Object.fromEntries(stops.map((stop) => [stop.id, blankEntry(newId)])),
    note: '',
  }
}

function blankEntry(newId: () => string): StopEntry {
  return {
    id: newId(),
    greasingId: newId(),
    strokes: '',
    grams: '',
    oldGrease: '',
    relief: '',
    temperatureC: '',
    note: '',
    reason: '',
    overdoseConfirmed: false,
    extraReason: '',
    outcome: null,
    doneAt: null,
    doseG: null,
  }
}

export interface WalkCount {
  done: number
  checked: number
  skipped: number
  open: number
}

export function countWalk({ round, entries }: Pick<Walk, 'round' | 'entries'>): WalkCount {
  const count: WalkCount = { done: 0, checked: 0, skipped: 0, open: 0 }
  for (const { id } of round.stops) count[entries[id]?.outcome ?? 'open'] += 1
  return count
}

/** The next stop without a result after this one; past the last, where the summary names those left open, where there is none. */
export function nextOpen({ round, entries }: Pick<Walk, 'round' | 'entries'>, after: number): number {
  const next = round.stops.findIndex(({ id }, index) => index > after && entries[id]?.outcome == null)
  return next === -1 ? round.stops.length : next
}

/** Whether the gun must not be used here: another grease than the plan's is in it. */
export function isWrongGun(stop: Pick<RoundStop, 'task' | 'greaseId'>, gun: GunInHand | null): boolean {
  return gun !== null && takesGrease(stop.task) && stop.greaseId !== null && gun.greaseId !== stop.greaseId
}

/** The dose that is typed, in g; undefined where it is no number yet. */
export function typedDoseG(entry: StopEntry, gun: GunInHand | null): number | undefined {
  if (gun === null) return parseNumber(entry.grams)
  const strokes = parseNumber(entry.strokes)
  return strokes === undefined ? undefined : strokesG(strokes, gun.gramsPerStroke)
}

export type StopFaults = Partial<Record<keyof StopEntry, string>>

/** What has to be put right before the stop is signed. */
export function stopFaults(stop: RoundStop, entry: StopEntry, gun: GunInHand | null, outcome: StopOutcome): StopFaults {
  const faults: StopFaults = {}
  const celsius = parseNumber(entry.temperatureC)
  if (entry.temperatureC.trim() !== '' && (celsius === undefined || celsius < -60 || celsius > 250))
    faults.temperatureC = 'Enter the temperature in °C, like 48 or 48,5.'
  if (outcome === 'skipped' && entry.reason.trim().length < 3) faults.reason = 'Say in a few words why it is skipped.'
  return outcome === 'done' && takesGrease(stop.task) ? { ...faults, ...doseFaults(stop, entry, gun) } : faults
}

function doseFaults(stop: RoundStop, entry: StopEntry, gun: GunInHand | null): StopFaults {
  const dose = typedDoseG(entry, gun)
  if (gun !== null && (dose === undefined || !Number.isInteger(parseNumber(entry.strokes)) || dose <= 0))
    return { strokes: 'Enter the strokes that went in, as a whole number.' }
  if (dose === undefined || dose < 0.1 || dose > 20_000) return { grams: 'Enter the dose in grams, like 12 or 12,5.' }
  if (overdoseCautions(dose, stop.doseG).length === 0) return {}
  return {
    ...(!entry.overdoseConfirmed && { overdoseConfirmed: 'Say yes where so much went in, or correct the number.' }),
    ...(entry.extraReason.trim().length < 3 && { extraReason: 'Say in a few words why so much went in.' }),
  }
}

/** The result as the service takes it; it has no faults by now. */
export function stopBody(
  stop: RoundStop,
  entry: StopEntry,
  gun: GunInHand | null,
  outcome: StopOutcome,
): z.input<typeof NewWalkStop> {
  const over = overdoseCautions(typedDoseG(entry, gun) ?? 0, stop.doseG).length > 0
  return {
    id: entry.id,
    stopId: stop.id,
    outcome,
    doneAt: entry.doneAt ?? '',
    reason: outcome === 'skipped' ? entry.reason.trim() : '',
    greasing: outcome === 'done' ? { id: entry.greasingId, ...doseBody(stop, entry, gun) } : null,
    overdoseConfirmed: outcome === 'done' && over && entry.overdoseConfirmed,
    extraReason: outcome === 'done' ? entry.extraReason.trim() : '',
    oldGrease: entry.oldGrease || null,
    reliefClosed: entry.relief === '' ? null : entry.relief === 'closed',
    temperatureC: parseNumber(entry.temperatureC) ?? null,
    note: entry.note.trim(),
  }
}

function doseBody(stop: RoundStop, entry: StopEntry, gun: GunInHand | null) {
  if (!takesGrease(stop.task)) return {}
  const { greaseId } = stop
  if (gun === null) return { greaseId, doseG: parseNumber(entry.grams) ?? null }
  const { id: gunId, gramsPerStroke } = gun
  return { greaseId: gun.greaseId ?? greaseId, gunId, gramsPerStroke, strokes: parseNumber(entry.strokes) ?? null }
}
