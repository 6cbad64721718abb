import { Client, type ClientBase } from 'pg'
import { hashPassword } from '../apps/api/src/access/passwords.ts'
import type { Sql } from '../apps/api/src/db/database.ts'
import { refreshPositions, refreshShafts } from '../apps/api/src/bookkeeping/refresh.ts'
import { putOffMountFlags } from '../apps/api/src/mounts/decisions.store.ts'
import { addFittedParts } from '../apps/api/src/mounts/fitted-parts.store.ts'
import { plantDay } from '@shaftbook/contract/time-zone'
import { chooseSite } from './builders/in-site.ts'
import { insertRows } from './builders/insert-rows.ts'
import { nameRecords, signMounts } from './builders/sign-rows.ts'
import { aPerson, type PersonRow } from './builders/site-rows.ts'
import { carefulTechnician, engineer, manager, storekeeper, type DemoPerson } from './harrow-point/people.ts'
import { simulateTerminal, type Scenario } from './harrow-point/scenario.ts'
import { harrowPoint, sallowQuay } from './harrow-point/terminals.ts'

export type DemoSignIn = Pick<DemoPerson, 'role' | 'name' | 'email' | 'password'>

/** Whom a person can sign in as in the demo: one of each role. The manager belongs to both sites. */
export const demoSignIns: readonly DemoSignIn[] = [carefulTechnician, storekeeper, engineer, manager].map(
  ({ role, name, email, password }) => ({ role, name, email, password }),
)

export interface LoadDemoOptions {
  /** Database address of the role that owns the tables. */
  ownerUrl: string
  /** The plant's day that the six years end on, such as 2026-11-24; the present day if left out. */
  today?: string
  onProgress?: (text: string) => void
}

const positionsAtOnce = 200

/**
 * Fills the database with the demo: Harrow Point with six years of history up to the day, and the small Sallow Quay. All
 * in one transaction; where Harrow Point is there already, nothing happens.
 */
export async function loadDemo(options: LoadDemoOptions): Promise<{ signIns: readonly DemoSignIn[] }> {
  const { onProgress = () => {} } = options
  const client = new Client({ connectionString: options.ownerUrl })
  await client.connect()
  try {
    await client.query('begin')
    // a second loader waits here for the first, and then finds its work
    await client.query("select pg_advisory_xact_lock(hashtext('load demo'))")
    if (await isThere(client, harrowPoint.code)) onProgress('The demo is there already')
    else await loadSites(client, options.today, onProgress)
    await client.query('commit')
    return { signIns: demoSignIns }
  } catch (error) {
    await client.query('rollback')
    throw error
  } finally {
    await client.end()
  }
}

async function isThere(client: ClientBase, code: string): Promise<boolean> {
  const { rowCount } = await client.query('select from site where code = $1', [code])
  return rowCount !== 0
}

async function loadSites(
  client: ClientBase,
  day: string | undefined,
  onProgress: (text: string) => void,
): Promise<void> {
  const present = new Date()
  const today = day ?? plantDay(present, harrowPoint.timeZone)
  const now = day === undefined ? present : new Date(`${day}T12:00:00Z`)
  onProgress('Simulating six years at Harrow Point')
  const scenarios = [harrowPoint, sallowQuay].map((terminal) => simulateTerminal(terminal, today))
  const persons = await hashedPeople(scenarios)
  await insertRows(client, 'person', persons)
  for (const scenario of scenarios) {
    onProgress(`Writing the book of ${scenario.site.name}`)
    await insertScenario(client, scenario)
    onProgress(`Working out due dates and flags of ${scenario.site.name}`)
    await addPartsTaken(client, scenario)
    await refreshAll(client, scenario, now)
    await putOffDecided(client, scenario)
  }
}

/** What the mounts took from the shelf, by the service's own rules. */
async function addPartsTaken(client: ClientBase, { site, rows }: Scenario): Promise<void> {
  const tx = writerAt(client, site.id, null)
  for (const { id, positionId, details } of rows.mount_record) {
    await addFittedParts(tx, { mountRecordId: id, positionId }, details.kitCheck ?? [])
  }
}

/** The flags of mounts that the engineer accepted until a day are put off until then. */
async function putOffDecided(client: ClientBase, { site, rows, signings }: Scenario): Promise<void> {
  for (const { mountRecordId, until, reason, decidedBy } of rows.mount_decision) {
    const signing = signings.find((candidate) => candidate.mountRecordId === mountRecordId)
    if (until === null || !signing) continue
    await putOffMountFlags(writerAt(client, site.id, decidedBy), signing.fitmentId, { until, reason })
  }
}

/** Somebody, or nobody, who writes at a site in the open transaction. */
function writerAt(client: ClientBase, siteId: string, personId: string | null) {
  const sql: Sql = async (text, values = []) => (await client.query(text, [...values])).rows
  return { scope: { siteId, personId }, sql }
}

async function hashedPeople(scenarios: readonly Scenario[]): Promise<PersonRow[]> {
  const people = new Map(scenarios.flatMap((scenario) => scenario.people).map((person) => [person.id, person]))
  return await Promise.all(
    [...people.values()].map(async ({ id, email, name, password }) =>
      aPerson({ id, email, name, passwordHash: await hashPassword(password) }),
    ),
  )
}

const beforeRecords = [
  'area',
  'machine',
  'meter',
  'shaft',
  'bearing_type',
  'grease',
  'maker_chart',
  'maker_chart_row',
  'part',
  'kit',
  'kit_line',
  'position',
  'grease_plan',
  'bearing',
  'fitment',
  'mount_record',
  'mount_reading',
  'gauge',
  'mount_plan',
] as const
const afterSigning = ['removal', 'greasing', 'meter_reading', 'mount_decision', 'observation', 'grease_change'] as const

/** Inserts a site with everything in it, through all triggers; its people have to be there. */
export async function insertScenario(client: ClientBase, scenario: Scenario): Promise<void> {
  const { site, people } = scenario
  await insertRows(client, 'site', [site])
  await chooseSite(client, site.id)
  const memberships = people.map(({ id, role }) => ({ personId: id, siteId: site.id, role }))
  await insertRows(client, 'membership', memberships)
  for (const table of beforeRecords) await insertTable(client, scenario.rows, table)
  await signMounts(client, scenario.signings)
  for (const table of afterSigning) await insertTable(client, scenario.rows, table)
  await nameRecords(client, scenario.fitmentRecords)
  await client.query('analyze position, fitment, greasing, meter_reading, mount_record')
}

async function insertTable<T extends keyof Scenario['rows']>(
  client: ClientBase,
  rows: Pick<Scenario['rows'], T>,
  table: T,
): Promise<void> {
  await insertRows(client, table, rows[table])
}

const beforeAll = new Date(0)
/** How greasings met their windows, due dates and flags are worked out by the service's own rules. */
async function refreshAll(client: ClientBase, { site, rows }: Scenario, now: Date): Promise<void> {
  const bookkeeping = writerAt(client, site.id, null)
  for (let from = 0; from < rows.position.length; from += positionsAtOnce) {
    const ids = rows.position.slice(from, from + positionsAtOnce).map(({ id }) => id)
    await refreshPositions(bookkeeping, ids, now, 'the demo was loaded', beforeAll)
  }
  await refreshShafts(
    bookkeeping,
    rows.shaft.map(({ id }) => id),
    now,
    'the demo was loaded',
  )
}
