import type { Role } from '@shaftbook/contract/roles'
import type { ClientBase } from 'pg'
import { v7 as newId } from 'uuid'
import { aBearingType, aGrease, aKit, aKitLine, aPart, type BearingTypeRow } from './catalogue-rows.ts'
import { inSite } from './in-site.ts'
import { insertRows } from './insert-rows.ts'
import { wantedParts, type WantedPart } from './position-kit.ts'
import { aGreasePlan, aPosition } from './position-rows.ts'
import { aMachine, aMeter, aMeterReading, anArea, aPerson, aShaft, aSite } from './site-rows.ts'
import { testPassword, testPasswordHash } from './test-password.ts'

const day = 24 * 3600 * 1000

export interface SmallSitePerson {
  id: string
  name: string
  email: string
  password: string
}
export interface SmallSitePosition {
  id: string
  tag: string
  planId: string
  kitId: string
  /** The kit's parts by kind: bearing, sleeve, nut, washer, ring (locating only), seal, bolts, grease. */
  partIds: Partial<Record<WantedPart['kind'], string>>
}
export interface SmallSite {
  siteId: string
  code: string
  people: Record<Role, SmallSitePerson>
  areaId: string
  machineId: string
  machineTag: string
  meterId: string
  /** The meter's only reading. */
  meterRead: { at: Date; shownHours: number }
  shaftId: string
  greaseId: string
  bearingTypeId: string
  locating: SmallSitePosition
  nonLocating: SmallSitePosition
}

/**
 * One site with a person of each role (their password is `testPassword`), an area, a machine whose meter was read at
 * 1000 h 90 days ago, a shaft at 90 rev/min and its two positions for 22220 K/C3 in SN520 housings, judged by the generic
 * guide: `…-DE` locates, `…-NDE` does not. Each has a kit with parts and a grease plan (2000 h, 12 months, 42 g). Nothing
 * is fitted or greased; due rows and flags are the service's own and are not there yet. E-mail addresses are
 * `<role>@<code>.example`. Opens its own transaction.
 */
export async function seedSmallSite(client: ClientBase, options: { code: string }): Promise<SmallSite> {
  const { code } = options
  const site = aSite({ code, name: `Site ${code}` })
  const passwordHash = await testPasswordHash()
  return inSite(client, site.id, async () => {
    await insertRows(client, 'site', [site])
    const people = await admitPeople(client, site.id, code, passwordHash)
    const machine = await placeMachine(client, site.id, people.technician.id)
    const bearingType = aBearingType({ siteId: site.id })
    const grease = aGrease({ siteId: site.id, name: 'Marl EP 2' })
    await insertRows(client, 'bearing_type', [bearingType])
    await insertRows(client, 'grease', [grease])
    const ends = await placePositions(client, { siteId: site.id, ...machine, bearingType, greaseId: grease.id })
    const ids = { siteId: site.id, code, people, greaseId: grease.id, bearingTypeId: bearingType.id }
    return { ...ids, ...machine, ...ends }
  })
}

async function admitPeople(
  client: ClientBase,
  siteId: string,
  code: string,
  passwordHash: string,
): Promise<SmallSite['people']> {
  const admit = async (role: Role): Promise<SmallSitePerson> => {
    const person = aPerson({ email: `${role}@${code}.example`, name: `${role} of ${code}`, passwordHash })
    await insertRows(client, 'person', [person])
    await insertRows(client, 'membership', [{ personId: person.id, siteId, role }])
    return { id: person.id, name: person.name, email: person.email, password: testPassword }
  }
  return {
    technician: await admit('technician'),
    stores: await admit('stores'),
    engineer: await admit('engineer'),
    manager: await admit('manager'),
  }
}

type PlacedMachine = Pick<SmallSite, 'areaId' | 'machineId' | 'machineTag' | 'meterId' | 'meterRead' | 'shaftId'>

async function placeMachine(client: ClientBase, siteId: string, readBy: string): Promise<PlacedMachine> {
  const meterRead = { at: new Date(Date.now() - 90 * day), shownHours: 1000 }
  const area = anArea({ siteId, code: 'GAL', name: 'Gallery', walkingOrder: 10 })
  const machine = aMachine({ siteId, areaId: area.id, tag: 'BC-01', name: 'Belt 1' })
  const last = { lastReadAt: meterRead.at, lastTotalHours: meterRead.shownHours }
  const meter = aMeter({ siteId, machineId: machine.id, ...last })
  const reading = { readAt: meterRead.at, shownHours: meterRead.shownHours }
  const shaft = aShaft({ siteId, machineId: machine.id })
  await insertRows(client, 'area', [area])
  await insertRows(client, 'machine', [machine])
  await insertRows(client, 'meter', [meter])
  await insertRows(client, 'meter_reading', [aMeterReading({ siteId, meterId: meter.id, readBy, ...reading })])
  await insertRows(client, 'shaft', [shaft])
  return {
    areaId: area.id,
    machineId: machine.id,
    machineTag: machine.tag,
    meterId: meter.id,
    meterRead,
    shaftId: shaft.id,
  }
}

interface Placing {
  siteId: string
  shaftId: string
  machineTag: string
  bearingType: BearingTypeRow
  greaseId: string
}

async function placePositions(
  client: ClientBase,
  placing: Placing,
): Promise<Pick<SmallSite, 'locating' | 'nonLocating'>> {
  const parts = new Map<string, string>()
  const place = async (end: string, locating: boolean): Promise<SmallSitePosition> => {
    const { siteId, shaftId, bearingType, greaseId } = placing
    const kit = await placeKit(client, placing, locating, parts)
    const tag = `${placing.machineTag}-HD-${end}`
    const name = locating ? 'Drive side' : 'Far side'
    const base = { siteId, shaftId, bearingTypeId: bearingType.id, kitId: kit.kitId }
    const position = aPosition({ ...base, tag, name, locating })
    const plan = aGreasePlan({ siteId, positionId: position.id, greaseId, createdAt: new Date(Date.now() - 90 * day) })
    await insertRows(client, 'position', [position])
    await insertRows(client, 'grease_plan', [plan])
    return { id: position.id, tag, planId: plan.id, ...kit }
  }
  return { locating: await place('DE', true), nonLocating: await place('NDE', false) }
}

async function placeKit(
  client: ClientBase,
  placing: Placing,
  locating: boolean,
  parts: Map<string, string>,
): Promise<Pick<SmallSitePosition, 'kitId' | 'partIds'>> {
  const { siteId, bearingType } = placing
  const place = { bearingType, housingCode: 'SN520', locating, shaftDiameterMm: 90, greaseName: 'Marl EP 2' }
  const wanted = wantedParts(place)
  const kit = aKit({ siteId, name: `${bearingType.designation} SN520 ${locating ? 'locating' : 'non-locating'}` })
  const fresh = wanted.filter((part) => !parts.has(part.designation))
  const partRows = fresh.map(({ kind, designation, description }) =>
    aPart({ siteId, id: newId(), kind, designation, description }),
  )
  for (const part of partRows) parts.set(part.designation, part.id)
  const lines = wanted.map(({ designation, quantity, unit, need, reason }, index) => {
    const partId = parts.get(designation) as string
    return aKitLine({ siteId, kitId: kit.id, lineNumber: index + 1, partId, quantity, unit, need, reason })
  })
  await insertRows(client, 'part', partRows)
  await insertRows(client, 'kit', [kit])
  await insertRows(client, 'kit_line', lines)
  return { kitId: kit.id, partIds: Object.fromEntries(wanted.map((part) => [part.kind, parts.get(part.designation)])) }
}
