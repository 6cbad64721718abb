import { aGreasing } from '../builders/position-rows.ts'
import { aFitment } from '../builders/record-rows.ts'
import type { Random } from '../random.ts'
import { registerDays } from './calendar.ts'
import { changeBearing, drawShift, fitBearing, newBearing, type Shift } from './change.ts'
import { failureOf, takenOut } from './endings.ts'
import type { Place, PlantMachine } from './plant.ts'
import { doseGiven, isGreased, isRoundDay, nextPart } from './rounds.ts'
import { readMeter, runMachine, type Running } from './running.ts'
import { age, drawLife, isSettled, type Spot, type Stay, type World } from './spot.ts'
import { truth } from './truth.ts'

/** From this many days before the end, mounts that come out wrong are put right, so that few stand open at the end. */
const tidyDays = 150

/**
 * Six years of one machine, day by day: hours run, grease is pressed in or forgotten, bearings wear by the true rates and
 * are changed when they fail, when their neighbour fails, at the yearly stop, or because the mount came out wrong.
 */
export function simulateMachine(world: World, machine: PlantMachine): void {
  const random = world.random.fork(machine.spec.tag)
  const running = runMachine(machine, world.calendar, random.fork('running'))
  const tools = { ...world, random: random.fork('meter'), readBy: world.signerIds.usual }
  readMeter(machine, running, tools)
  const shafts = machine.shafts.map(({ places }) =>
    places.map((place) => startSpot(world, machine, place, running, random.fork(place.position.tag))),
  )
  for (let day = machine.firstDay + 1; day < registerDays; day++) {
    const shift = drawShift(random, day)
    for (const spots of shafts) {
      for (const spot of spots) {
        age(spot, day)
        greaseOnRound(world, machine, spot, day)
      }
      workOnShaft(world, machine, spots, shift)
    }
  }
}

function startSpot(world: World, machine: PlantMachine, place: Place, running: Running, random: Random): Spot {
  const care = 0.78 + random.uniform(0, 0.18)
  const common = { place, running, random, care, nextPart: nextPart(random, care), doseRatio: 1 }
  if (!machine.older) {
    const shift = { ...drawShift(random, machine.firstDay), minutes: 8 * 60 }
    const intent = place.standing === null || place.standing.kind === 'mount' ? undefined : ('good' as const)
    return { ...common, ...fitBearing(world, place, running, random, shift, { reason: 'New machine', intent }) }
  }
  const intervalDays = Math.min(place.plan.intervalHours / running.hoursPerDay(0), place.plan.calendarMonths * 30)
  const last = { day: -Math.round(random.uniform(0, 0.9) * intervalDays), recorded: null }
  return { ...common, last, stay: olderStay(world, place, running, random) }
}

/** A bearing that was in before the register began: its age is an estimate, and nobody wrote down how it was mounted. */
function olderStay(world: World, place: Place, running: Running, random: Random): Stay {
  const { siteId, calendar, book } = world
  const ageHours = Math.round((random.uniform(0.05, 0.6) * place.scaleHours) / 100) * 100
  const ageDays = Math.ceil(ageHours / running.hoursPerDay(0))
  const fittedAt = calendar.at(-ageDays, 12 * 60)
  const bearing = { ...newBearing(world, place, random, fittedAt), serial: null, lot: null, packedOn: null }
  const read = running.readAt(0)
  const fitment = aFitment({
    siteId,
    id: random.uuidAt(calendar.at(0, 0)),
    positionId: place.position.id,
    bearingId: bearing.id,
    fittedAt,
    startRunHours: read === null ? null : read - ageHours,
    hoursSource: read === null ? 'estimate' : 'meter',
    entryAgeHours: ageHours,
    createdAt: calendar.at(0, 0),
  })
  const records = { fitmentId: fitment.id, mountRecordId: null, removalId: null }
  book.bearings.push(bearing)
  book.fitments.push(fitment)
  book.fitmentRecords.push(records)
  const used = (ageHours * truth.mountRate.unrecorded) / place.scaleHours
  const life = drawLife(random, 'unrecorded', used)
  // its days are counted from the register's first, its hours before that are its age at entry
  const stay = { bearing, fitment, records, outcome: 'unrecorded', fittedDay: 0, life, used } as const
  return { ...stay, usedByLateGrease: 0, putRightDay: null }
}

function greaseOnRound(world: World, machine: PlantMachine, spot: Spot, day: number): void {
  const { calendar, book, signerIds, siteId } = world
  const { place, running, random, last } = spot
  if (!isRoundDay(place, calendar, day) || spot.stay.fittedDay === day) return
  if (!isGreased(place, running, { last, part: spot.nextPart, day, calendar })) return
  const greasedAt = calendar.at(
    day,
    7 * 60 + machine.shafts.length + place.area.walkingOrder * 4 + random.integer(0, 20),
  )
  const read = running.readAt(day)
  const runHours = read !== null && random.chance(0.96) ? read : null
  const doseG = doseGiven(random, place.plan.doseG)
  const recorded = aGreasing({
    siteId,
    id: random.uuidAt(greasedAt),
    positionId: place.position.id,
    planId: place.plan.id,
    greasedAt,
    runHours,
    hoursSource: runHours === null ? 'none' : 'meter',
    greaseId: place.plan.greaseId,
    doseG,
    plannedDoseG: place.plan.doseG,
    signedBy: random.chance(0.5) ? signerIds.careful : signerIds.usual,
  })
  book.greasings.push(recorded)
  spot.last = { day, recorded }
  spot.nextPart = nextPart(random, spot.care)
  spot.doseRatio = doseG / place.plan.doseG
}

/** What the day asks for on a shaft: at most one change a position. */
function workOnShaft(world: World, machine: PlantMachine, spots: readonly Spot[], shift: Shift): void {
  const failed = spots.filter((spot) => spot.stay.used >= spot.stay.life && !isSettled(spot, shift.day))
  for (const spot of spots) {
    const { stay, place, random } = spot
    if (stay.fittedDay === shift.day) continue
    const { standing } = place
    if (standing?.kind === 'mount' && shift.day === registerDays - standing.daysAgo) {
      const ending = takenOut('Planned change')
      changeBearing(world, spot, shift, ending, { reason: 'Planned change', intent: standing.outcome })
    } else if (isSettled(spot, shift.day)) {
      continue
    } else if (failed.includes(spot)) {
      const wear = {
        outcome: stay.outcome,
        lateGreaseShare: stay.usedByLateGrease / stay.used,
        standby: machine.row.standby,
        machineKind: machine.row.kind,
      }
      const ending = failureOf(random, place, wear)
      replace(world, spot, shift, ending, 'Bearing failed')
    } else if (failed.length > 0 && random.chance(0.3)) {
      replace(world, spot, shift, takenOut('Changed with its neighbour, which had failed'), 'Neighbour failed')
    } else {
      tidyUp(world, spot, shift)
    }
  }
}

function tidyUp(world: World, spot: Spot, shift: Shift): void {
  const { stay, random } = spot
  const { day } = shift
  if (day >= registerDays - tidyDays && isWrong(stay)) stay.putRightDay ??= day + random.integer(1, 20)
  if (stay.putRightDay !== null && day >= stay.putRightDay) {
    return replace(world, spot, shift, takenOut('Mount put right'), 'Mount put right', 'good')
  }
  if (!world.calendar.isStop(day) || day < 60 || !random.chance(changeAtStop(world, spot, day))) return
  const unrecorded = stay.outcome === 'unrecorded'
  const cause = unrecorded
    ? 'Changed at the yearly stop to bring it into the book'
    : 'Changed by age at the yearly stop'
  replace(world, spot, shift, takenOut(cause), 'Yearly stop')
}

/** Chance of a change on one of the fourteen days of the yearly stop; in the third year the last old one goes. */
function changeAtStop({ calendar }: World, { stay, place, running }: Spot, day: number): number {
  if (stay.outcome === 'unrecorded') {
    const lastOfThird = day > 2 * 365 + 60 && calendar.isStop(day) && !calendar.isStop(day + 1)
    return lastOfThird ? 1 : 0.025
  }
  const hours = running.totalAt(day) - running.totalAt(stay.fittedDay)
  return hours > 0.65 * place.scaleHours ? 0.025 : 0
}

function replace(
  world: World,
  spot: Spot,
  shift: Shift,
  ending: ReturnType<typeof takenOut>,
  reason: string,
  wanted?: 'good',
): void {
  const toLast = shift.day > registerDays - 25 || spot.place.standing?.kind === 'left-behind'
  changeBearing(world, spot, shift, ending, { reason, intent: wanted ?? (toLast ? 'good' : undefined) })
  const { stay, random } = spot
  if (isWrong(stay) && random.chance(0.35)) stay.putRightDay = shift.day + random.integer(3, 20)
}

function isWrong({ outcome }: Stay): boolean {
  return outcome === 'under' || outcome === 'over' || outcome === 'thin'
}
