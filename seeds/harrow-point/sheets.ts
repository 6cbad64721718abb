import { capBoltTorque } from '@shaftbook/bearing/bolts'
import type { KitCheckLine, MountDetails } from '@shaftbook/contract/mount-details'
import { housingOf } from '../builders/position-kit.ts'
import { aMountReading, type MountReadingRow, type MountRecordRow } from '../builders/record-rows.ts'
import type { Random } from '../random.ts'
import type { Book } from './book.ts'
import type { Place, Plant } from './plant.ts'
import { driveSteps, feltAtStep, firstRun, shaftAsMeasured } from './sheet-numbers.ts'
import type { Stores } from './stores.ts'

interface Filling {
  random: Random
  plant: Plant
  stores: Stores
  /** Sheets of mounts from then on were filled as a whole; before, only the readings were written down. */
  since: Date
}

/** Fills the sheets of the mounts that were felt since a day: as found, seats, kit, drive-up, lock, cap and first run. */
export function fillSheets(book: Book, { random, plant, stores, since }: Filling): void {
  const places = new Map(
    plant.machines
      .flatMap(({ shafts }) => shafts.flatMap((shaft) => shaft.places))
      .map((place) => [place.position.id, place]),
  )
  const typed = new Map(book.mountReadings.map((reading) => [reading.mountRecordId, reading]))
  for (const record of book.mountRecords) {
    const place = places.get(record.positionId)
    const reading = typed.get(record.id)
    if (!place || !reading || record.mountedAt < since) continue
    fillSheet(random, record, place, stores)
    book.mountReadings.push(...stepReadings(random, record, reading))
  }
}

function fillSheet(random: Random, record: MountRecordRow, place: Place, stores: Stores): void {
  const { position, type } = place
  const housing = housingOf(position.housingCode, type)
  const bolts = housing && capBoltsOf(housing.seatDiameterMm)
  record.capBoltTorqueNm = bolts?.targetNm ?? null
  record.details = {
    cautionsSeenBy: record.fitter,
    asFound: asFound(random, record),
    seat: {
      shaft: shaftAsMeasured(random, position.shaftDiameterMm ?? type.boreMm),
      shaftSystem: 'metric',
      shaftSurface: random.pick(['clean', 'clean', 'dressed']),
      shaftDecision: 'use-again',
      housing: [],
      housingSeatWidthMm: position.housingSeatWidthMm,
      softFootMm: random.integer(0, 5) / 100,
      housingDecision: 'use-again',
      note: '',
    },
    kitCheck: kitCheck(random, place, stores),
    driveSteps: driveSteps(record),
    locking: {
      forwardDeg: random.integer(0, 12),
      lockedWith: record.lockingCode?.startsWith('MS') ? 'clip' : 'tab',
      note: '',
    },
    rings: {
      placed: record.ringCount === 2 ? 'both-sides' : record.ringCount === 1 ? 'nut-side' : null,
      seals: 'New split seals, greased',
      sealsTurn: true,
    },
    capBolts: bolts,
    startUp: firstRun(random, record.mountedAt),
  }
}

function asFound(random: Random, { ringCount }: MountRecordRow): MountDetails['asFound'] {
  return {
    ringCount: ringCount === 1 || ringCount === 2 ? ringCount : 0,
    nutSide: random.pick(['Towards the machine', 'Away from the machine']),
    seals: random.pick(['Lips worn, no leak', 'One half hard', 'Sound']),
    grease: random.pick(['Dark, not hard', 'Grey, with dust of grain', 'As pressed in']),
    note: '',
  }
}

function capBoltsOf(seatDiameterMm: number): MountDetails['capBolts'] {
  const size = seatDiameterMm < 200 ? 'M16' : 'M20'
  const torque = capBoltTorque(size, '8.8', 'oiled')
  const targetNm = torque.found ? Math.round(torque.torqueNm / 5) * 5 : null
  return { size, propertyClass: '8.8', friction: 'light-oil', targetNm, stepsDone: [30, 70, 100], marksMatch: true }
}

function kitCheck(random: Random, { position }: Place, { rows }: Stores): KitCheckLine[] {
  const lines = rows.kitLines.filter(({ kitId }) => kitId === position.kitId)
  return lines.flatMap(({ id, partId, quantity, unit }) => {
    const part = rows.parts.find((candidate) => candidate.id === partId)
    if (!part) return []
    const planned = { kitLineId: id, partId, kind: part.kind, plannedCode: part.designation, quantity, unit }
    return [{ ...planned, ...found(random, part.kind, part.designation) }]
  })
}

function found(
  random: Random,
  kind: KitCheckLine['kind'],
  designation: string,
): Pick<KitCheckLine, 'found' | 'foundCode' | 'reason'> {
  if (kind === 'nut' && random.chance(0.3)) {
    return { found: 'not-needed', foundCode: '', reason: 'The old nut is whole and was used again' }
  }
  if (kind === 'seal' && random.chance(0.1)) {
    return { found: 'other', foundCode: `${designation} felt`, reason: 'The split seals had not come' }
  }
  return { found: 'as-planned', foundCode: '', reason: '' }
}

/** Clearances felt on the way up, in the unit and with the sign of the record's other readings. */
function stepReadings(random: Random, record: MountRecordRow, like: MountReadingRow): MountReadingRow[] {
  return driveSteps(record)
    .slice(0, -1)
    .flatMap((step) =>
      (['A', 'B'] as const).map((bearingRow) => {
        const clearanceUm = feltAtStep(random, record, step)
        const mm = (clearanceUm / 1000).toFixed(2)
        return aMountReading({
          siteId: record.siteId,
          id: random.uuidAt(record.mountedAt),
          mountRecordId: record.id,
          moment: 'step',
          stepNumber: step.number,
          bearingRow,
          clearanceNm: clearanceUm * 1000,
          typedValue:
            like.typedUnit === 'um' ? String(clearanceUm) : mm.replace('.', like.typedValue.includes(',') ? ',' : '.'),
          typedUnit: like.typedUnit,
        })
      }),
    )
}
