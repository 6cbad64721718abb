import { defaultCalendarMonths } from '@shaftbook/bearing/due'
import { greaseDose } from '@shaftbook/bearing/grease'
import type { GreaseEntry, GreasePlan, NewGreasePlan } from '@shaftbook/contract/grease-plans'
import { bearingLevel, dutyOf, dutyToday, type PlaceToday, type PlanDuty } from '@shaftbook/contract/plan-duty'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import type { z } from 'zod'
import { parseNumber } from '../../lib/length-units.ts'
import { dutyEntryOf, dutyTyped, hoursOf, type DutyEntry } from './duty-entry.ts'

/** A plan of regreasing by gun as an engineer types it. */
export interface PlanEntry extends DutyEntry {
  source: GreasePlan['source']
  greaseId: string
  entry: GreaseEntry
  doseG: string
  intervalHours: string
  calendarMonths: string
  reason: string
  /** Of an interval by hand: the day to look at it again. */
  reviewOn: string
}

export type PlanFaults = Partial<Record<string, string>>

/** A new plan begins with what the one before says, or with the duty that was tried on it. */
export function startOfPlan(place: PositionOverview, tried?: DutyEntry): PlanEntry {
  const { plan, shaft } = place
  const text = (value: number | null | undefined): string => (value == null ? '' : String(value))
  return {
    source: tried ? 'computed' : (plan?.source ?? 'computed'),
    greaseId: plan?.greaseId ?? '',
    entry: plan?.entry ?? 'side',
    doseG: text(plan?.doseG ?? suggestedDoseG(place, 'side')),
    ...(tried ?? startOfDuty(place)),
    intervalHours: text(plan?.intervalHours),
    calendarMonths: text(
      plan?.calendarMonths ?? defaultCalendarMonths({ wet: false, vertical: shaft.attitude === 'vertical' }),
    ),
    reason: '',
    reviewOn: '',
  }
}

function startOfDuty(place: PositionOverview): DutyEntry {
  const { plan, shaft } = place
  const duty = plan && dutyOf(plan)
  if (duty) return dutyEntryOf(dutyToday(duty, todayOf(place)))
  return {
    speedRpm: shaft.speedRpm === null ? '' : String(shaft.speedRpm),
    levels: {
      temperature: '65-to-80',
      dirt: 'light-abrasive',
      moisture: '80-to-90',
      vibration: 'below-5',
      shaft: shaft.attitude,
      bearing: bearingLevel(typeOf(place).kind),
    },
    loadOverRating: '',
    outerRingTurns: false,
    capLifted: false,
  }
}

/** What the register says today of the place. */
export function todayOf(place: PositionOverview): PlaceToday {
  const { kind, boreMm, outsideDiameterMm, widthMm } = typeOf(place)
  const { speedRpm, attitude } = place.shaft
  return { speedRpm, attitude, bearingKind: kind, boreMm, outsideDiameterMm, widthMm }
}

export function typeOf(place: PositionOverview): PositionOverview['bearingType'] {
  return place.fittedType ?? place.bearingType
}

/** The dose by the size of the bearing (R-DOSE), in g. */
export function suggestedDoseG(place: PositionOverview, entry: GreaseEntry): number {
  const { outsideDiameterMm, widthMm } = typeOf(place)
  return greaseDose(outsideDiameterMm, widthMm, entry).doseG
}

/** The duty of the entry, with the size of the bearing that it is for. */
export function dutyOfEntry(entry: DutyEntry, place: PositionOverview): PlanDuty {
  const { boreMm, outsideDiameterMm, widthMm } = typeOf(place)
  return { ...dutyTyped(entry, boreMm), outsideDiameterMm, widthMm }
}

/** The interval in whole run hours that the entry comes to; null where it comes to none. */
export function intervalTyped(entry: PlanEntry, place: PositionOverview): number | null {
  if (entry.source === 'by-hand') return parseNumber(entry.intervalHours) ?? null
  return hoursOf(dutyOfEntry(entry, place))
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
    reviewOn: entry.source === 'by-hand' && entry.reviewOn !== '' ? entry.reviewOn : null,
    duty: entry.source === 'computed' ? { ...dutyOfEntry(entry, place) } : {},
  }
}
