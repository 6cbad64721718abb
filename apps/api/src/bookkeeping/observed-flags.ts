import { temperatureRise, vibrationRise, zoneWorse, type VibrationZone } from '@shaftbook/bearing/observed-rise'
import type { FlagFacts, FlagKind } from '@shaftbook/contract/flags'
import { baseUrgency, type WantedFlag } from './flag-rules.ts'

/** What was observed of the bearing that is in, oldest first. */
export interface ObservedFacts {
  readonly observationId: string
  readonly observedAt: string
  readonly temperatureC: number | null
  readonly vibrationMmS: number | null
  readonly zone: VibrationZone | null
}

/** The flags of the newest temperature and vibration against the bearing's own history: R-OVER, ISO 20816-1. */
export function observedFlags(fitmentId: string, observed: readonly ObservedFacts[]): WantedFlag[] {
  return [...hotFlag(fitmentId, observed), ...vibrationFlag(fitmentId, observed)]
}

function hotFlag(fitmentId: string, observed: readonly ObservedFacts[]): WantedFlag[] {
  const read = observed.flatMap((each) => (each.temperatureC === null ? [] : [{ ...each, value: each.temperatureC }]))
  const newest = read.at(-1)
  if (!newest) return []
  const { verdict, usual, rise } = temperatureRise(valuesBefore(read), newest.value)
  if (verdict !== 'risen' || usual === null || rise === null) return []
  const facts = { observationId: newest.observationId, observedC: newest.value, usualC: usual }
  return [flag('running-hot', fitmentId, newest.observedAt, Math.min(40, rise - 15), facts)]
}

function vibrationFlag(fitmentId: string, observed: readonly ObservedFacts[]): WantedFlag[] {
  const read = observed.flatMap((each) => (each.vibrationMmS === null ? [] : [{ ...each, value: each.vibrationMmS }]))
  const zoned = observed.flatMap((each) => (each.zone === null ? [] : [{ ...each, value: each.zone }]))
  const [newest, zone] = [read.at(-1), zoned.at(-1)]
  const rise = newest && vibrationRise(valuesBefore(read), newest.value)
  const worse = zone !== undefined && zoneWorse(valuesBefore(zoned), zone.value)
  if (rise?.verdict !== 'risen' && !worse) return []
  const since = [rise?.verdict === 'risen' ? newest : undefined, worse ? zone : undefined].find(
    (each) => each !== undefined,
  )
  if (!since) return []
  const facts: FlagFacts = {
    observationId: since.observationId,
    observedMmS: newest?.value,
    usualMmS: rise?.usual ?? undefined,
    zone: zone?.value,
  }
  return [flag('vibration-rise', fitmentId, since.observedAt, zone?.value === 'D' ? 40 : 0, facts)]
}

function valuesBefore<T>(read: readonly { readonly value: T }[]): T[] {
  return read.slice(0, -1).map(({ value }) => value)
}

function flag(kind: FlagKind, subjectId: string, since: string, more: number, facts: FlagFacts): WantedFlag {
  return { kind, subjectId, since, urgency: baseUrgency[kind] + more, facts }
}
