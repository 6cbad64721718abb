import { aGreasing } from '../builders/position-rows.ts'
import { aBearing, aFitment, aRemoval, type BearingRow } from '../builders/record-rows.ts'
import type { Random } from '../random.ts'
import type { Ending } from './endings.ts'
import type { Intent } from './feeler.ts'
import { writeMount } from './fitting.ts'
import { crews, type Crew } from './people.ts'
import type { Place } from './plant.ts'
import { nextPart, type LastGreased } from './rounds.ts'
import type { Running } from './running.ts'
import { drawLife, type Spot, type Stay, type World } from './spot.ts'
import type { MountOutcome } from './truth.ts'

const noMeter = 'The machine has no hour meter'
const notRead = 'The meter was covered in dust and was not read'

/** Who works, and when: a crew is together for all that is done on a machine in a day. */
export interface Shift {
  crew: Crew
  day: number
  /** Minutes after midnight. */
  minutes: number
}

export function drawShift(random: Random, day: number): Shift {
  return {
    crew: random.weighted(crews.map((crew) => [crew, crew.share])),
    day,
    minutes: random.integer(7 * 60, 12 * 60),
  }
}

/** Bearing, fitment, mount record and first fill of a new stay. */
export function fitBearing(
  world: World,
  place: Place,
  running: Running,
  random: Random,
  shift: Shift,
  wish: { reason: string; intent?: Intent },
): { stay: Stay; last: LastGreased } {
  const { siteId, calendar, book, signerIds, catalogue } = world
  const { crew, day } = shift
  const mountedAt = calendar.at(day, shift.minutes + random.integer(150, 260))
  const signedBy = signerIds[crew.signer]
  const read = running.readAt(day)
  const runHours = read !== null && random.chance(0.97) ? read : null
  const noHoursReason = runHours !== null ? null : read === null ? noMeter : notRead
  const intent = wish.intent ?? intentOf(random, crew, place)
  const bearing = newBearing(world, place, random, mountedAt)
  const fillRecorded = place.standing?.kind !== 'never-greased'
  const charts = { heads: Object.values(catalogue.charts), rows: catalogue.chartRows }
  const hours = { runHours, noHoursReason }
  const work = { place, crew, intent, mountedAt, ...hours, reason: wish.reason, fillRecorded, signedBy, charts }
  const { record, readings, judged } = writeMount(random, { ...work, bearingId: bearing.id })
  const fitment = aFitment({
    siteId,
    id: random.uuidAt(mountedAt),
    positionId: place.position.id,
    bearingId: bearing.id,
    fittedAt: mountedAt,
    startRunHours: runHours,
    hoursSource: runHours === null ? 'estimate' : 'meter',
  })
  const records = { fitmentId: fitment.id, mountRecordId: record.id, removalId: null }
  book.bearings.push(bearing)
  book.fitments.push(fitment)
  book.mountRecords.push(record)
  book.mountReadings.push(...readings)
  book.signings.push({ mountRecordId: record.id, fitmentId: fitment.id, signedAt: mountedAt, signedBy })
  book.fitmentRecords.push(records)
  const outcome: MountOutcome = !judged ? 'unjudged' : intent === 'not-proven' ? 'good' : intent
  const life = drawLife(random, outcome, 0)
  const stay = {
    bearing,
    fitment,
    records,
    outcome,
    fittedDay: day,
    life,
    used: 0,
    usedByLateGrease: 0,
    putRightDay: null,
  }
  return { stay, last: firstFill(world, place, random, { fillRecorded, runHours, mountedAt, day, signedBy, record }) }
}

function firstFill(
  { siteId, book }: World,
  { position, plan }: Place,
  random: Random,
  filled: {
    fillRecorded: boolean
    runHours: number | null
    mountedAt: Date
    day: number
    signedBy: string
    record: { greaseBearingG: number | null; greaseHousingG: number | null }
  },
): LastGreased {
  if (!filled.fillRecorded) return { day: filled.day, recorded: null }
  const recorded = aGreasing({
    siteId,
    id: random.uuidAt(filled.mountedAt),
    positionId: position.id,
    planId: plan.id,
    kind: 'initial-fill',
    greasedAt: filled.mountedAt,
    runHours: filled.runHours,
    hoursSource: filled.runHours === null ? 'none' : 'meter',
    greaseId: plan.greaseId,
    doseG: (filled.record.greaseBearingG ?? 0) + (filled.record.greaseHousingG ?? 0),
    signedBy: filled.signedBy,
  })
  book.greasings.push(recorded)
  return { day: filled.day, recorded }
}

/** Ends a stay: writes the removal and closes the fitment. */
export function takeOut(world: World, spot: Spot, shift: Shift, ending: Ending): void {
  const { siteId, calendar, book, signerIds } = world
  const { place, running, random, stay } = spot
  const { fitment } = stay
  const removedAt = calendar.at(shift.day, shift.minutes + random.integer(0, 60))
  const runHours = running.readAt(shift.day)
  const removal = aRemoval({
    siteId,
    id: random.uuidAt(removedAt),
    fitmentId: fitment.id,
    positionId: place.position.id,
    removedAt,
    runHours,
    noHoursReason: runHours === null ? noMeter : null,
    ...ending,
    observer: shift.crew.fitter,
    signedBy: signerIds[shift.crew.signer],
  })
  fitment.removedAt = removedAt
  fitment.endRunHours = runHours
  if (runHours !== null && fitment.startRunHours !== null) {
    fitment.runHours = runHours - fitment.startRunHours
  } else {
    const days = shift.day - stay.fittedDay
    fitment.runHours = Math.round(fitment.entryAgeHours + days * running.hoursPerDay(shift.day))
    fitment.hoursSource = 'estimate'
  }
  stay.records.removalId = removal.id
  book.removals.push(removal)
}

/** Takes the bearing out and puts a new one in. */
export function changeBearing(
  world: World,
  spot: Spot,
  shift: Shift,
  ending: Ending,
  wish: { reason: string; intent?: Intent },
): void {
  takeOut(world, spot, shift, ending)
  const { stay, last } = fitBearing(world, spot.place, spot.running, spot.random, shift, wish)
  spot.stay = stay
  spot.last = last
  spot.nextPart = nextPart(spot.random, spot.care)
  spot.doseRatio = 1
}

/** How the crew's work ends up; too little clearance inside the band is only possible with normal clearance. */
function intentOf(random: Random, crew: Crew, place: Place): Intent {
  const drawn = random.weighted(crew.outcomes)
  return drawn === 'thin' && place.type.clearanceClass !== 'CN' ? 'over' : drawn
}

const makers = [
  ['Tarnbeck', 'TB'],
  ['Lindmoor', 'LM'],
  ['Corrow', 'CW'],
] as const

/** A new bearing out of its maker's pack. */
export function newBearing({ siteId, calendar }: World, place: Place, random: Random, at: Date): BearingRow {
  const [maker, letters] = random.pick(makers)
  const packedOn = new Date(at.getTime() - random.integer(40, 700) * 86_400_000).toISOString().slice(0, 10)
  return aBearing({
    siteId,
    id: random.uuidAt(at),
    bearingTypeId: place.type.id,
    serial: `${letters}-${random.integer(100_000, 999_999)}-${random.integer(10, 99)}`,
    lot: `${packedOn.slice(2, 4)}${packedOn.slice(5, 7)}-${random.integer(1, 40)}`,
    maker,
    packedOn: packedOn < calendar.today ? packedOn : null,
    createdAt: at,
  })
}
