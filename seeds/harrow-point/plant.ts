import { greaseDose } from '@shaftbook/bearing/grease'
import { greaseInterval, type IntervalInput } from '@shaftbook/bearing/grease-interval'
import type { BearingTypeRow } from '../builders/catalogue-rows.ts'
import { housingOf, sleeveOf } from '../builders/position-kit.ts'
import { aGreasePlan, aPosition, type GunPlanRow, type PositionRow } from '../builders/position-rows.ts'
import {
  aMachine,
  aMeter,
  anArea,
  aShaft,
  type AreaRow,
  type MachineRow,
  type MeterRow,
  type ShaftRow,
} from '../builders/site-rows.ts'
import type { Random } from '../random.ts'
import { registerDays, type Calendar } from './calendar.ts'
import type { Catalogue } from './catalogue.ts'
import { bearingSpecs, type AreaSpec, type MachineSpec, type ShaftSpec } from './layout.ts'
import type { Standing } from './standing.ts'
import type { Stores } from './stores.ts'
import { scaleHours } from './truth.ts'

/** A position with everything that the simulation asks of it. */
export interface Place {
  position: PositionRow
  type: BearingTypeRow
  plan: GunPlanRow
  area: AreaSpec
  spec: ShaftSpec
  standing: Standing | null
  /** The true scale of lives here, in run hours. */
  scaleHours: number
}
export interface PlantMachine {
  row: MachineRow
  spec: MachineSpec
  /** Day of the register on which it was built, or 0 where it is older. */
  firstDay: number
  older: boolean
  meter: MeterRow | null
  shafts: { row: ShaftRow; places: Place[] }[]
}
export interface Plant {
  areas: AreaRow[]
  machines: PlantMachine[]
}

/** What a terminal consists of. */
export interface Layout {
  areas: readonly AreaSpec[]
  machines: readonly MachineSpec[]
  standings: ReadonlyMap<string, Standing>
}

interface Site {
  siteId: string
  layout: Layout
  random: Random
  calendar: Calendar
  catalogue: Catalogue
  stores: Stores
}

/** The register of a terminal: areas, machines, shafts, and positions with types, kits, bands and grease plans. */
export function makePlant(site: Site): Plant {
  const since = site.calendar.at(0, 0)
  const areas = site.layout.areas.map(({ code, name, walkingOrder }) =>
    anArea({ siteId: site.siteId, id: site.random.uuidAt(since), code, name, walkingOrder }),
  )
  const machines = site.layout.machines.map((spec) => {
    const area = site.layout.areas.findIndex(({ code }) => code === spec.area)
    return makeMachine(site, spec, site.layout.areas[area] as AreaSpec, (areas[area] as AreaRow).id)
  })
  return { areas, machines }
}

function makeMachine(site: Site, spec: MachineSpec, area: AreaSpec, areaId: string): PlantMachine {
  const { siteId, random, calendar } = site
  const older = spec.builtDaysAgo === undefined
  const firstDay = older ? 0 : registerDays - (spec.builtDaysAgo ?? 0)
  const since = calendar.at(firstDay, 0)
  const { tag, name, kind, hoursPerDay, standby = false } = spec
  const row = aMachine({ siteId, id: random.uuidAt(since), areaId, tag, name, kind, hoursPerDay, standby })
  const meter = spec.meter ? aMeter({ siteId, id: random.uuidAt(since), machineId: row.id }) : null
  const shafts = spec.shafts.map((shaftSpec) => {
    const { code, speedRpm, attitude = 'horizontal', overrideReason = null } = shaftSpec
    const shaft = aShaft({
      siteId,
      id: random.uuidAt(since),
      machineId: row.id,
      code,
      name: `${shaftSpec.name} shaft`,
      speedRpm,
      attitude,
      locatingOverrideReason: overrideReason,
    })
    const place = (end: 'A' | 'B'): Place =>
      makePlace(site, { machine: spec, spec: shaftSpec, area, shaftId: shaft.id, end, since })
    return { row: shaft, places: [place('A'), place('B')] }
  })
  return { row, spec, firstDay, older, meter, shafts }
}

interface Spot {
  machine: MachineSpec
  spec: ShaftSpec
  area: AreaSpec
  shaftId: string
  end: 'A' | 'B'
  since: Date
}

function makePlace(site: Site, { machine, spec, area, shaftId, end, since }: Spot): Place {
  const { siteId, random, stores, catalogue, layout } = site
  const type = stores.bearingType(spec.bearing)
  const housingCode = bearingSpecs[spec.bearing].housing
  const locating = spec.locating === 'both' || (spec.locating !== 'none' && end === 'A')
  const shaftDiameterMm = sleeveOf(type)?.shaftMm ?? type.boreMm
  const kit = stores.kit({ bearingType: type, housingCode, locating, shaftDiameterMm, greaseName: area.grease })
  const tag = `${machine.tag}-${spec.code}-${end}`
  const position = aPosition({
    siteId,
    id: random.uuidAt(since),
    shaftId,
    tag,
    name: end === 'A' ? 'Drive side' : 'Far side',
    locating,
    seat: type.taper === null ? 'cylindrical' : 'adapter-sleeve',
    shaftDiameterMm,
    housingCode,
    housingSeatWidthMm: housingOf(housingCode, type)?.seatWidthMm ?? null,
    bearingTypeId: type.id,
    kitId: kit.id,
    ...bandSource(machine, type, catalogue),
  })
  const plan = makePlan(site, position, { machine, spec, area, since }, type)
  const scale = scaleHours(machine.area, spec.loadOverRating, spec.speedRpm)
  return { position, type, plan, area, spec, standing: layout.standings.get(tag) ?? null, scaleHours: scale }
}

type BandSource = Partial<
  Pick<PositionRow, 'makerChartId' | 'ownReductionMinNm' | 'ownReductionMaxNm' | 'ownResidualMinNm' | 'ownBandSource'>
>

function bandSource(machine: MachineSpec, type: BearingTypeRow, { charts }: Catalogue): BandSource {
  if (type.taper === null || type.kind !== 'spherical-roller' || machine.band === undefined) return {}
  if (machine.band !== 'own') return { makerChartId: charts[machine.band].id }
  const source = 'Engineer’s note 7: this machine shakes, so its bearings are driven up a little further'
  const [min, max] = [75_000, 95_000]
  return { ownReductionMinNm: min, ownReductionMaxNm: max, ownResidualMinNm: 80_000, ownBandSource: source }
}

function makePlan(
  { siteId, random, catalogue }: Site,
  position: PositionRow,
  { machine, spec, area, since }: Pick<Spot, 'machine' | 'spec' | 'area' | 'since'>,
  type: BearingTypeRow,
): GunPlanRow {
  const entry = machine.kind === 'fan' && type.kind === 'spherical-roller' ? 'outer-ring-groove' : 'side'
  const input: IntervalInput = {
    speedRpm: spec.speedRpm,
    boreMm: type.boreMm,
    levels: {
      ...area.climate,
      shaft: spec.attitude ?? 'horizontal',
      bearing: type.kind === 'self-aligning-ball' ? 'radial-ball' : 'spherical-roller',
    },
    loadOverRating: spec.loadOverRating,
  }
  const interval = greaseInterval(input)
  if (interval.kind !== 'interval') throw new Error(`${position.tag}: ${interval.sentence}`)
  return aGreasePlan({
    siteId,
    id: random.uuidAt(since),
    positionId: position.id,
    greaseId: catalogue.greases[area.grease].id,
    entry,
    doseG: Math.ceil(greaseDose(type.outsideDiameterMm, type.widthMm, entry).doseG),
    intervalHours: Math.max(50, Math.floor(interval.intervalHours / 10) * 10),
    calendarMonths: area.calendarMonths,
    source: 'computed',
    reason: interval.factors.map(({ label }) => label).join('; '),
    duty: { ...input },
    createdAt: since,
  })
}
