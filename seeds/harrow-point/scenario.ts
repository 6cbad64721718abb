import type { RowOf, TableName } from '../builders/insert-rows.ts'
import type { FitmentRecords, MountSigning } from '../builders/sign-rows.ts'
import { aSite, type SiteRow } from '../builders/site-rows.ts'
import { makeRandom } from '../random.ts'
import type { MountRecordRow } from '../builders/record-rows.ts'
import { emptyBook, type Book } from './book.ts'
import { makeCalendar, registerDays } from './calendar.ts'
import { makeCatalogue } from './catalogue.ts'
import { correctSome } from './corrections.ts'
import { engineer, type Crew, type DemoPerson } from './people.ts'
import { writeOtherWays, type OtherWays } from './other-ways.ts'
import { writePlannedWork, type PlannedWork } from './planned-work.ts'
import { makePlant, type Layout, type Plant } from './plant.ts'
import { fillSheets } from './sheets.ts'
import { simulateMachine } from './simulate.ts'
import { makeStores } from './stores.ts'

/** A site to simulate, and who signs what there. */
export interface Terminal extends Layout {
  seed: string
  code: string
  name: string
  timeZone: string
  people: readonly DemoPerson[]
  signers: Record<Crew['signer'], DemoPerson>
  work: PlannedWork
  otherWays: OtherWays
}

/** Sheets were filled as a whole in the last days of the register. */
const filledDays = 240

/** Everything of one site, before passwords are hashed. */
export interface Scenario {
  site: SiteRow
  people: (DemoPerson & { id: string })[]
  rows: { [T in Exclude<TableName, 'site' | 'person' | 'membership'>]: RowOf[T][] }
  signings: MountSigning[]
  fitmentRecords: FitmentRecords[]
}

/** A terminal with six years behind it on a day: the same seed and day give the same rows, ids included. */
export function simulateTerminal(terminal: Terminal, today: string): Scenario {
  const random = makeRandom(terminal.seed)
  const calendar = makeCalendar(today)
  const since = calendar.at(0, 0)
  const ids = random.fork('register')
  const site = aSite({ id: ids.uuidAt(since), code: terminal.code, name: terminal.name, timeZone: terminal.timeZone })
  const siteId = site.id
  // by e-mail address alone, so that somebody of two sites is one person
  const personId = ({ email }: DemoPerson): string => makeRandom(email).uuidAt(since)
  const catalogue = makeCatalogue(siteId, ids, since)
  const stores = makeStores(siteId, ids, since)
  const plant = makePlant({ siteId, layout: terminal, random: ids, calendar, catalogue, stores })
  const book = emptyBook()
  const signerIds = { careful: personId(terminal.signers.careful), usual: personId(terminal.signers.usual) }
  for (const machine of plant.machines) {
    simulateMachine({ siteId, random, calendar, catalogue, book, signerIds }, machine)
  }
  const filledSince = calendar.at(registerDays - filledDays, 0)
  fillSheets(book, { random: random.fork('sheets'), plant, stores, since: filledSince })
  const ways = writeOtherWays(terminal.otherWays, {
    siteId,
    random: random.fork('other ways'),
    calendar,
    plant,
    book,
    greases: catalogue.greases,
    careful: signerIds.careful,
    engineerId: personId(engineer),
  })
  correctSome(book, random.fork('corrections'), signerIds.careful)
  const writing = { siteId, random: random.fork('planned'), calendar, engineerId: personId(engineer) }
  const positions = plantRows(plant).position
  const planned = writePlannedWork(terminal.work, { ...writing, positions, mounts: mountsInForce(book) })
  const { bearingTypes, parts, kits, kitLines } = stores.rows
  return {
    site,
    people: terminal.people.map((person) => ({ ...person, id: personId(person) })),
    rows: {
      ...plantRows(plant),
      grease_plan: [...plantRows(plant).grease_plan, ...ways.plans],
      bearing_type: bearingTypes,
      grease: Object.values(catalogue.greases),
      maker_chart: Object.values(catalogue.charts),
      maker_chart_row: catalogue.chartRows,
      part: parts,
      kit: kits,
      kit_line: kitLines,
      bearing: book.bearings,
      fitment: book.fitments,
      mount_record: book.mountRecords,
      mount_reading: book.mountReadings,
      removal: book.removals,
      greasing: [...book.greasings, ...ways.greasings],
      observation: ways.observations,
      grease_change: ways.changes,
      meter_reading: book.meterReadings,
      ...planned,
    },
    signings: book.signings,
    fitmentRecords: book.fitmentRecords,
  }
}

/** The record that counts of each bearing that is in, by position. */
function mountsInForce(book: Book): Map<string, MountRecordRow> {
  const open = new Set(book.fitments.filter(({ removedAt }) => removedAt === null).map(({ id }) => id))
  const records = book.fitmentRecords.filter(({ fitmentId }) => open.has(fitmentId))
  const ids = new Set(records.map(({ mountRecordId }) => mountRecordId))
  return new Map(book.mountRecords.filter(({ id }) => ids.has(id)).map((record) => [record.positionId, record]))
}

function plantRows({ areas, machines }: Plant) {
  const shafts = machines.flatMap((machine) => machine.shafts)
  const places = shafts.flatMap((shaft) => shaft.places)
  return {
    area: areas,
    machine: machines.map(({ row }) => row),
    meter: machines.flatMap(({ meter }) => meter ?? []),
    shaft: shafts.map(({ row }) => row),
    position: places.map(({ position }) => position),
    grease_plan: places.map(({ plan }) => plan),
  }
}
