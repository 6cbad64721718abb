import type { IntervalInput, IntervalLevels } from '@shaftbook/bearing/grease-interval'
import { greaseDose } from '@shaftbook/bearing/grease'
import { defaultCalendarMonths } from '@shaftbook/bearing/due'
import type { GreaseEntry, GreasePlan, NewGreasePlan } from '@shaftbook/contract/grease-plans'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import type { z } from 'zod'
import { parseNumber } from '../../lib/length-units.ts'
import { dutyOf, intervalOf } from './plan-duty.ts'

/** A grease plan as an engineer types it. */
export interface PlanEntry {
  source: GreasePlan['source']
  greaseId: string
  entry: GreaseEntry
  doseG: string
  speedRpm: string
  levels: IntervalLevels
  /** Load over rating as typed; empty: not known. */
  loadOverRating: string
  outerRingTurns: boolean
  capLifted: boolean
  intervalHours: string
  calendarMonths: string
  reason: string
}

export type PlanFaults = Partial<Record<string, string>>

/** A new plan begins with what the one before says. */
export function startOfPlan(place: PositionOverview): PlanEntry {
  const { plan, shaft } = place
  const duty = plan && dutyOf(plan)
  const text = (value: number | null | undefined): string => (value == null ? '' : String(value))
  return {
    source: plan?.source ?? 'computed',
    greaseId: plan?.greaseId ?? '',
    entry: plan?.entry ?? 'side',
    doseG: text(plan?.doseG ?? suggestedDoseG(place, 'side')),
    speedRpm: text(shaft.speedRpm ?? duty?.speedRpm),
    levels: duty?.levels ?? {
      temperature: '65-to-80',
      dirt: 'light-abrasive',
      moisture: '80-to-90',
      vibration: 'below-5',
      shaft: shaft.attitude,
      bearing: bearingLevel(typeOf(place).kind),
    },
    loadOverRating: text(duty?.loadOverRating),
    outerRingTurns: duty?.outerRingTurns ?? false,
    capLifted: duty?.capLifted ?? false,
    intervalHours: text(plan?.intervalHours),
    calendarMonths: text(
      plan?.calendarMonths ?? defaultCalendarMonths({ wet: false, vertical: shaft.attitude === 'vertical' }),
    ),
    reason: '',
  }
}

export function typeOf(place: PositionOverview): PositionOverview['bearingType'] {
  return place.fittedType ?? place.bearingType
}

/** The dose by the size of the bearing (R-DOSE), in g. */
export function suggestedDoseG(place: PositionOverview, entry: GreaseEntry): number {
  const { outsideDiameterMm, widthMm } = typeOf(place)
  return greaseDose(outsideDiameterMm, widthMm, entry).doseG
}

export function dutyTyped(entry: PlanEntry, place: PositionOverview): IntervalInput {
  return {
    speedRpm: parseNumber(entry.speedRpm) ?? Number.NaN,
    boreMm: typeOf(place).boreMm,
    levels: entry.levels,
    loadOverRating: parseNumber(entry.loadOverRating) ?? null,
    outerRingTurns: entry.outerRingTurns,
    capLifted: entry.capLifted,
  }
}

/** The interval in whole run hours that the entry comes to; null where it comes to none. */
export function intervalTyped(entry: PlanEntry, place: PositionOverview): number | null {
  if (entry.source === 'by-hand') return parseNumber(entry.intervalHours) ?? null
  const interval = intervalOf(dutyTyped(entry, place))
  return interval.kind === 'interval' ? Math.floor(interval.intervalHours) : null
}

export function planFaults(entry: PlanEntry, place: PositionOverview): PlanFaults {
  const faults: PlanFaults = {}
  const within = (field: string, text: string, min: number, max: number, sentence: string): void => {
    const value = parseNumber(text)
    if (value === undefined || value < min || value > max) faults[field] = sentence
  }
  if (entry.greaseId === '') faults['greaseId'] = 'Choose the grease.'
  within('doseG', entry.doseG, 0.1, 20_000, 'Enter a dose of 0.1 to 20 000 g.')
  within('calendarMonths', entry.calendarMonths, 1, 60, 'Enter 1 to 60 whole months.')
  if (!Number.isInteger(parseNumber(entry.calendarMonths))) faults['calendarMonths'] = 'Enter 1 to 60 whole months.'
  if (entry.source === 'by-hand') {
    within('intervalHours', entry.intervalHours, 1, 100_000, 'Enter 1 to 100 000 run hours.')
    if (entry.reason.trim().length < 3) faults['reason'] = 'An interval by hand needs its reason.'
    return faults
  }
  within('speedRpm', entry.speedRpm, 1, 20_000, 'Enter the speed, 1 to 20 000 rev/min.')
  if (entry.loadOverRating.trim() !== '')
    within('loadOverRating', entry.loadOverRating, 0, 1, 'Enter 0 to 1, or nothing.')
  const hours = intervalTyped(entry, place)
  if (!faults['speedRpm'] && (hours === null || hours < 1))
    faults['speedRpm'] = 'The formula gives no interval for this duty: set it by hand.'
  return faults
}

export function planBody(id: string, entry: PlanEntry, place: PositionOverview): z.input<typeof NewGreasePlan> {
  return {
    id,
    positionId: place.position.id,
    greaseId: entry.greaseId,
    entry: entry.entry,
    doseG: parseNumber(entry.doseG) ?? 0,
    intervalHours: intervalTyped(entry, place) ?? 0,
    calendarMonths: parseNumber(entry.calendarMonths) ?? 0,
    source: entry.source,
    reason: entry.reason.trim(),
    duty: entry.source === 'computed' ? { ...dutyTyped(entry, place) } : {},
  }
}

function bearingLevel(kind: PositionOverview['bearingType']['kind']): IntervalLevels['bearing'] {
  if (kind === 'deep-groove-ball' || kind === 'angular-contact-ball' || kind === 'self-aligning-ball')
    return 'radial-ball'
  return kind === 'cylindrical-roller' ? 'cylindrical-roller' : 'spherical-roller'
}
