import type { SiteSettings } from '@shaftbook/contract/access'
import type { Role } from '@shaftbook/contract/roles'
import { v7 as newId } from 'uuid'

/** What every row of a site starts with. */
export interface SiteOwned {
  siteId: string
  id: string
}
/** Overrides of a row of a site: anything, and the site itself. */
export type Overrides<Row extends { siteId: string }> = Partial<Row> & { siteId: string }

export interface SiteRow {
  id: string
  code: string
  name: string
  timeZone: string
  settings: Partial<SiteSettings>
}
export function aSite(over: Partial<SiteRow> = {}): SiteRow {
  const id = over.id ?? newId()
  return { code: `site-${id.slice(-8)}`, name: 'A site', timeZone: 'Europe/Berlin', settings: {}, ...over, id }
}

export interface PersonRow {
  id: string
  email: string
  name: string
  passwordHash: string
  disabledAt: Date | null
}
export function aPerson(over: Partial<PersonRow> & { passwordHash: string }): PersonRow {
  const id = over.id ?? newId()
  return { email: `person-${id.slice(-8)}@site.example`, name: 'A person', disabledAt: null, ...over, id }
}

export interface MembershipRow {
  personId: string
  siteId: string
  role: Role
}

export interface AreaRow extends SiteOwned {
  code: string
  name: string
  walkingOrder: number
}
export function anArea(over: Overrides<AreaRow>): AreaRow {
  const id = over.id ?? newId()
  return { code: `A-${id.slice(-6)}`, name: 'An area', walkingOrder: 0, ...over, id }
}

export interface MachineRow extends SiteOwned {
  areaId: string
  tag: string
  name: string
  kind: string
  standby: boolean
  hoursPerDay: number
}
export function aMachine(over: Overrides<MachineRow> & { areaId: string }): MachineRow {
  const id = over.id ?? newId()
  const plain = { tag: `M-${id.slice(-6)}`, name: 'A machine', kind: 'belt conveyor', standby: false, hoursPerDay: 24 }
  return { ...plain, ...over, id }
}

export interface ShaftRow extends SiteOwned {
  machineId: string
  code: string
  name: string
  speedRpm: number | null
  hollowBoreMm: number
  attitude: 'horizontal' | 'inclined' | 'vertical'
  locatingOverrideReason: string | null
}
export function aShaft(over: Overrides<ShaftRow> & { machineId: string }): ShaftRow {
  const plain = { code: 'HD', name: 'Head shaft', speedRpm: 90, hollowBoreMm: 0, locatingOverrideReason: null }
  return { ...plain, attitude: 'horizontal', ...over, id: over.id ?? newId() }
}

export interface MeterRow extends SiteOwned {
  machineId: string
  name: string
  rolloverAtHours: number | null
  lastReadAt: Date | null
  lastTotalHours: number | null
}
/** An hour meter; its last reading has to agree with the rows of `meter_reading`. */
export function aMeter(over: Overrides<MeterRow> & { machineId: string }): MeterRow {
  const plain = { name: 'Hour meter', rolloverAtHours: null, lastReadAt: null, lastTotalHours: null }
  return { ...plain, ...over, id: over.id ?? newId() }
}

export interface MeterReadingRow extends SiteOwned {
  meterId: string
  kind: 'reading' | 'exchange'
  readAt: Date
  shownHours: number
  newMeterShowsHours: number | null
  totalHours: number
  readBy: string
  correctsId: string | null
  correctionReason: string | null
  createdAt: Date
}
export function aMeterReading(over: Overrides<MeterReadingRow> & { meterId: string; readBy: string }): MeterReadingRow {
  const readAt = over.readAt ?? new Date()
  const shownHours = over.shownHours ?? 0
  const plain = { newMeterShowsHours: null, correctsId: null, correctionReason: null }
  return {
    ...plain,
    kind: 'reading',
    totalHours: shownHours,
    createdAt: readAt,
    ...over,
    id: over.id ?? newId(),
    readAt,
    shownHours,
  }
}
