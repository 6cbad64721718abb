import type { EndKind, NewRemoval, Removal, RemovalCorrection } from '@shaftbook/contract/removals'
import type { z } from 'zod'
import { parseNumber } from '../../lib/length-units.ts'
import { plantClock, plantInstant } from '../../lib/plant-time.ts'

/** A removal as it is typed. */
export interface RemovalEntry {
  /** Made once, so that a second sending is the same request. */
  id: string
  /** The stay that it was begun for; a correction and an entry of an older version of the pages have none. */
  leavingFitmentId?: string | undefined
  removedAt: string
  observer: string
  endKind: EndKind | ''
  /** Whether the mode was found out; only asked of a bearing that failed. */
  found: 'yes' | 'no' | ''
  modeClause: string | null
  cause: string
  detection: string
  evidence: string
  meterShowsHours: string
  noHoursReason: string
  correctionReason: string
}

export type EntryField = keyof RemovalEntry
export type Faults = Partial<Record<EntryField, string>>

interface Start {
  id: string
  leavingFitmentId?: string | undefined
  personName: string
  now: Date
  timeZone: string
}

export function newEntry({ id, leavingFitmentId, personName, now, timeZone }: Start): RemovalEntry {
  return {
    id,
    leavingFitmentId,
    removedAt: plantClock(now, timeZone),
    observer: personName,
    endKind: '',
    found: '',
    modeClause: null,
    cause: '',
    detection: '',
    evidence: '',
    meterShowsHours: '',
    noHoursReason: '',
    correctionReason: '',
  }
}

/** What a signed removal says, to be put right. */
export function entryOf(removal: Removal, { id, timeZone }: Pick<Start, 'id' | 'timeZone'>): RemovalEntry {
  const failed = removal.endKind === 'failed'
  return {
    id,
    removedAt: plantClock(new Date(removal.removedAt), timeZone),
    observer: removal.observer,
    endKind: removal.endKind,
    found: failed ? (removal.modeClause === null ? 'no' : 'yes') : '',
    modeClause: removal.modeClause,
    cause: removal.cause ?? '',
    detection: removal.detection ?? '',
    evidence: removal.evidence,
    meterShowsHours: '',
    noHoursReason: '',
    correctionReason: '',
  }
}

export interface Circumstances {
  purpose: 'new' | 'correction'
  hasMeter: boolean
  timeZone: string
  now: Date
  fittedAt: string
}

/** What has to be put right before it can be signed, by field. */
export function entryFaults(entry: RemovalEntry, about: Circumstances): Faults {
  const fresh = about.purpose === 'new'
  const faults: Faults = {
    removedAt: fresh ? timeFault(entry.removedAt, about) : undefined,
    meterShowsHours: fresh && about.hasMeter ? meterFault(entry) : undefined,
    endKind: entry.endKind === '' ? 'Say how the bearing ended.' : undefined,
    found: entry.endKind === 'failed' && entry.found === '' ? 'Say whether the mode was found out.' : undefined,
    modeClause:
      entry.endKind === 'failed' && entry.found === 'yes' && entry.modeClause === null
        ? 'Choose what you see, or say that it was not found out.'
        : undefined,
    observer: entry.observer.trim() === '' ? 'Enter who looked at the bearing.' : undefined,
    correctionReason:
      !fresh && entry.correctionReason.trim().length < 3 ? 'Say what was wrong and how you know.' : undefined,
  }
  return Object.fromEntries(Object.entries(faults).filter(([, fault]) => fault !== undefined))
}

function timeFault(typed: string, { timeZone, now, fittedAt }: Circumstances): string | undefined {
  const at = plantInstant(typed, timeZone)
  if (at === undefined) return 'Enter the day and the time.'
  if (Date.parse(at) > now.getTime() + 60_000) return 'This lies in the future: check the day and the time.'
  if (at <= fittedAt) return 'This lies before the bearing was fitted: check the day and the time.'
  return undefined
}

function meterFault({ meterShowsHours, noHoursReason }: RemovalEntry): string | undefined {
  if (meterShowsHours.trim() === '')
    return noHoursReason.trim().length < 3 ? 'Read the hour meter, or give the reason why not.' : undefined
  const hours = parseNumber(meterShowsHours)
  if (hours === undefined) return 'This cannot be read as a number: write it like 41280 or 41280,5.'
  return hours < 0 || hours > 1_000_000 ? 'An hour meter shows 0 to 1 000 000 h: check the number.' : undefined
}

/** The body of a new removal; the entry has no faults by now. */
export function newRemovalBody(
  entry: RemovalEntry,
  positionId: string,
  { hasMeter, timeZone }: Pick<Circumstances, 'hasMeter' | 'timeZone'>,
): z.input<typeof NewRemoval> {
  const meterShowsHours = hasMeter ? (parseNumber(entry.meterShowsHours) ?? null) : null
  const reason = hasMeter ? entry.noHoursReason.trim() : 'The machine has no hour meter'
  return {
    id: entry.id,
    positionId,
    ...(entry.leavingFitmentId !== undefined && { leavingFitmentId: entry.leavingFitmentId }),
    removedAt: plantInstant(entry.removedAt, timeZone)!,
    ...told(entry),
    meterShowsHours,
    noHoursReason: meterShowsHours === null ? reason : null,
  }
}

export function correctionBody(entry: RemovalEntry): z.input<typeof RemovalCorrection> {
  return { id: entry.id, correctionReason: entry.correctionReason.trim(), ...told(entry) }
}

function told(entry: RemovalEntry) {
  const failed = entry.endKind === 'failed'
  return {
    endKind: entry.endKind as EndKind,
    modeClause: failed && entry.found === 'yes' ? entry.modeClause : null,
    cause: entry.cause.trim() || null,
    detection: entry.detection.trim() || null,
    evidence: entry.evidence.trim(),
    observer: entry.observer.trim(),
  }
}

/** Words that tell of a condition: a bearing changed on one of them has failed (R-CENS). */
const ofCondition = /vibrat|alarm|noise|noisy|hot|heat|temperature|seiz|smell|smoke/i

/** What to ask, without refusing it, when end kind and detection do not go together. */
export function endQuestion({ endKind, detection }: Pick<RemovalEntry, 'endKind' | 'detection'>): string | undefined {
  if (endKind !== 'not-failed' || !ofCondition.test(detection)) return undefined
  return `It was noticed by "${detection.trim()}". Where its condition forced the change, it failed, even if it still turned. Is it really not failed?`
}
