import { guns as gunEndpoints } from '@shaftbook/contract/guns'
import * as contract from '@shaftbook/contract/register-tables'
import { holdMachinesOfPositions, holdMachinesOfShafts } from '../bookkeeping/hold.ts'
import { refreshPositions, refreshShafts } from '../bookkeeping/refresh.ts'
import type { SiteTx } from '../db/database.ts'
import {
  checkBearingType,
  checkMayRetype,
  checkMeterMovable,
  checkMovable,
  checkPosition,
  checkRetirable,
  checkShaft,
} from './rules.ts'
import * as places from './places.store.ts'
import { day, equals, hasText, instant, nanometreList, nanometres, registerTable } from './table.ts'

export const areas = registerTable(contract.areas, {
  table: 'area',
  columns: { code: 'code', name: 'name', walkingOrder: 'walking_order' },
  filters: {},
  sorts: {
    walkingOrder: { column: 'walking_order', type: 'int4' },
    code: { column: 'code', type: 'text' },
    name: { column: 'name', type: 'text' },
  },
})

export const machines = registerTable(contract.machines, {
  table: 'machine',
  columns: {
    areaId: 'area_id',
    tag: 'tag',
    name: 'name',
    kind: 'kind',
    standby: 'standby',
    hoursPerDay: 'hours_per_day',
  },
  filters: {
    areaId: equals('area_id', 'uuid'),
    standby: equals('standby', 'boolean'),
    search: hasText('tag', 'name'),
  },
  sorts: { tag: { column: 'tag', type: 'text' }, name: { column: 'name', type: 'text' } },
  follow: async (tx, { id, before, now }) => {
    if (!before) return
    const { shaftIds, positionIds } = await places.ofMachine(tx, id)
    await refreshPositions(tx, positionIds, now, 'machine changed')
    await refreshShafts(tx, shaftIds, now, 'machine changed')
  },
})

export const shafts = registerTable(contract.shafts, {
  table: 'shaft',
  columns: {
    machineId: 'machine_id',
    code: 'code',
    name: 'name',
    speedRpm: 'speed_rpm',
    hollowBoreMm: 'hollow_bore_mm',
    attitude: 'attitude',
    locatingOverrideReason: 'locating_override_reason',
  },
  filters: { machineId: equals('machine_id', 'uuid') },
  sorts: { code: { column: 'code', type: 'text' }, name: { column: 'name', type: 'text' } },
  hold: (tx, id) => holdMachinesOfShafts(tx, [id]),
  check: checkShaft,
  follow: async (tx, { id, before, after, now }) => {
    await refreshShafts(tx, [id], now, 'shaft changed')
    const positionIds = before ? await places.positionsOfShaft(tx, id) : []
    if (before && (before.speedRpm !== after.speedRpm || before.attitude !== after.attitude)) {
      await refreshPositions(tx, positionIds, now, 'shaft changed')
    }
    if (before && before.machineId !== after.machineId) {
      checkMovable(await places.tagsWithHours(tx, positionIds), 'machineId')
      await refreshPositions(tx, positionIds, now, 'shaft moved to another machine')
    }
  },
})

export const meters = registerTable(contract.meters, {
  table: 'meter',
  columns: { machineId: 'machine_id', name: 'name', rolloverAtHours: 'rollover_at_hours' },
  filters: { machineId: equals('machine_id', 'uuid') },
  sorts: { name: { column: 'name', type: 'text' } },
  follow: async (tx, { id, before, after }) => {
    if (before && before.machineId !== after.machineId) checkMeterMovable(await places.isMeterRead(tx, id))
  },
})

export const bearingTypes = registerTable(contract.bearingTypes, {
  table: 'bearing_type',
  columns: {
    designation: 'designation',
    basicCode: 'basic_code',
    series: 'series',
    kind: 'kind',
    boreMm: 'bore_mm',
    outsideDiameterMm: 'outside_diameter_mm',
    widthMm: 'width_mm',
    taper: 'taper',
    clearanceClass: 'clearance_class',
    massKg: 'mass_kg',
    dynamicLoadRatingKn: 'dynamic_load_rating_kn',
    staticLoadRatingKn: 'static_load_rating_kn',
    sealed: 'sealed',
  },
  filters: {
    series: equals('series', 'text'),
    kind: equals('kind', 'text'),
    search: hasText('designation', 'basic_code'),
  },
  sorts: { designation: { column: 'designation', type: 'text' }, boreMm: { column: 'bore_mm', type: 'float8' } },
  check: checkBearingType,
  follow: async (tx, { id, before, now }) => {
    if (before) await refreshPositions(tx, await places.positionsOfType(tx, id), now, 'bearing type changed')
  },
})

export const bearings = registerTable(contract.bearings, {
  table: 'bearing',
  columns: {
    bearingTypeId: 'bearing_type_id',
    serial: 'serial',
    lot: 'lot',
    maker: 'maker',
    packedOn: day('packed_on'),
  },
  filters: { bearingTypeId: equals('bearing_type_id', 'uuid'), serial: hasText('serial') },
  sorts: {
    createdAt: { column: 'created_at', type: 'timestamptz' },
    serial: { column: "coalesce(serial, '')", type: 'text' },
  },
  follow: async (tx, { id, before, after, now }) => {
    if (!before || before.bearingTypeId === after.bearingTypeId) return
    const { positionIds, wasFitted } = await places.ofBearing(tx, id)
    if (wasFitted) checkMayRetype(await places.roleOf(tx))
    await refreshPositions(tx, positionIds, now, 'bearing changed')
  },
})

export const greases = registerTable(contract.greases, {
  table: 'grease',
  columns: {
    name: 'name',
    thickener: 'thickener',
    nlgiGrade: 'nlgi_grade',
    baseOilViscosity40cMm2s: 'base_oil_viscosity_40c_mm2s',
    code: 'code',
  },
  filters: { thickener: equals('thickener', 'text') },
  sorts: { name: { column: 'name', type: 'text' } },
  follow: async (tx, { id, before, after, now }) => {
    if (!before || before.name === after.name) return
    await refreshPositions(tx, await places.positionsGreasedWith(tx, id), now, 'grease renamed')
  },
})

export const parts = registerTable(contract.parts, {
  table: 'part',
  columns: { number: 'number', designation: 'designation', kind: 'kind', description: 'description', bin: 'bin' },
  filters: { kind: equals('kind', 'text'), search: hasText('number', 'designation', 'description') },
  sorts: {
    number: { column: 'number', type: 'text' },
    designation: { column: 'designation', type: 'text' },
    bin: { column: "coalesce(bin, '')", type: 'text' },
  },
})

export const positions = registerTable(contract.positions, {
  table: 'position',
  columns: {
    shaftId: 'shaft_id',
    tag: 'tag',
    name: 'name',
    locating: 'locating',
    seat: 'seat',
    shaftSystem: 'shaft_system',
    shaftDiameterMm: 'shaft_diameter_mm',
    housingCode: 'housing_code',
    housingSeatWidthMm: 'housing_seat_width_mm',
    bearingTypeId: 'bearing_type_id',
    kitId: 'kit_id',
    makerChartId: 'maker_chart_id',
    ownReductionMinUm: nanometres('own_reduction_min_nm'),
    ownReductionMaxUm: nanometres('own_reduction_max_nm'),
    ownResidualMinUm: nanometres('own_residual_min_nm'),
    ownBandSource: 'own_band_source',
    retiredAt: instant('retired_at'),
  },
  filters: {
    shaftId: equals('shaft_id', 'uuid'),
    bearingTypeId: equals('bearing_type_id', 'uuid'),
    kitId: equals('kit_id', 'uuid'),
    tag: hasText('tag'),
  },
  sorts: { tag: { column: 'tag', type: 'text' }, name: { column: 'name', type: 'text' } },
  hold: (tx, id) => holdMachinesOfPositions(tx, [id]),
  check: checkPosition,
  follow: async (tx, { id, before, after, now }) => {
    if (after.retiredAt !== null && before?.retiredAt === null) checkRetirable(await places.isOccupied(tx, id))
    if (before) await checkStaysAtMachine(tx, id, before.shaftId, after.shaftId)
    const shaftIds = new Set([after.shaftId, before?.shaftId ?? after.shaftId])
    await refreshPositions(tx, [id], now, 'position changed')
    await refreshShafts(tx, [...shaftIds], now, 'position changed')
  },
})

export const gauges = registerTable(contract.gauges, {
  table: 'gauge',
  columns: {
    name: 'name',
    kind: 'kind',
    bladesUm: nanometreList('blades_nm'),
    checkedUntil: day('checked_until'),
    note: 'note',
  },
  filters: { search: hasText('name', 'note') },
  sorts: { name: { column: 'name', type: 'text' } },
})

export const guns = registerTable(gunEndpoints, {
  table: 'gun',
  columns: {
    name: 'name',
    gramsPerStroke: 'grams_per_stroke',
    calibratedOn: day('calibrated_on'),
    strokesWeighed: 'strokes_weighed',
    greaseId: 'grease_id',
    note: 'note',
  },
  filters: { greaseId: equals('grease_id', 'uuid'), search: hasText('name', 'note') },
  sorts: { name: { column: 'name', type: 'text' } },
})

export const registerTables = [
  areas,
  machines,
  shafts,
  meters,
  bearingTypes,
  bearings,
  greases,
  parts,
  positions,
  gauges,
  guns,
]

async function checkStaysAtMachine(tx: SiteTx, id: string, from: string, to: string): Promise<void> {
  if (from === to || (await places.areOfOneMachine(tx, from, to))) return
  checkMovable(await places.tagsWithHours(tx, [id]), 'shaftId')
}
