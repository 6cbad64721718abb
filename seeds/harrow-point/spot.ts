import type { BearingRow, FitmentRow } from '../builders/record-rows.ts'
import type { FitmentRecords } from '../builders/sign-rows.ts'
import type { Random } from '../random.ts'
import { registerDays, type Calendar } from './calendar.ts'
import type { Catalogue } from './catalogue.ts'
import type { Book } from './book.ts'
import type { StayOutcome } from './endings.ts'
import type { Crew } from './people.ts'
import type { Place } from './plant.ts'
import { greaseRate, partGone, type LastGreased } from './rounds.ts'
import type { Running } from './running.ts'
import { truth } from './truth.ts'

/** What the whole simulation shares. */
export interface World {
  siteId: string
  random: Random
  calendar: Calendar
  catalogue: Catalogue
  book: Book
  signerIds: Record<Crew['signer'], string>
}

/** One bearing's stay at a position while the days go by. */
export interface Stay {
  bearing: BearingRow
  fitment: FitmentRow
  records: FitmentRecords
  outcome: StayOutcome
  fittedDay: number
  /** Of the life 1, scaled by the position: what was drawn, what is used up, and how much of that by late grease. */
  life: number
  used: number
  usedByLateGrease: number
  /** Day on which a mount that came out wrong is put right. */
  putRightDay: number | null
}

/** A position with its present state. */
export interface Spot {
  place: Place
  running: Running
  random: Random
  stay: Stay
  last: LastGreased
  nextPart: number
  /** How often the next greasing is done in its window. */
  care: number
  doseRatio: number
}

/** Draws a life for a mount; a bearing that is in already has outlived what it has used. */
export function drawLife(random: Random, outcome: StayOutcome, used: number): number {
  const shape = truth.shape[outcome]
  const more = random.weibull(1, 1)
  return (used ** shape + more) ** (1 / shape)
}

/** Uses up a day's part of the life that is left. */
export function age(spot: Spot, day: number): void {
  const { place, running, stay, last } = spot
  const hours = running.totalAt(day + 1) - running.totalAt(day)
  const base = (hours * truth.mountRate[stay.outcome]) / place.scaleHours
  const rate = greaseRate(partGone(place, running, last.day, day), spot.doseRatio)
  stay.used += base * rate
  stay.usedByLateGrease += base * (rate - 1)
}

/** Whether a position is kept from changing, so that what stands open there on the day of seeding still does. */
export function isSettled({ place }: Spot, day: number): boolean {
  const { standing } = place
  if (standing === null) return false
  if (standing.kind === 'mount') return day >= registerDays - standing.daysAgo
  if (standing.kind === 'left-behind')
    return registerDays - day < place.plan.calendarMonths * 30.4 * (standing.part + 1)
  return true
}
