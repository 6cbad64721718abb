import type { BearingName, MachineSpec, ShaftSpec } from './layout.ts'
import type { AreaCode } from './truth.ts'

type Extra = Partial<Omit<MachineSpec, 'area' | 'tag' | 'shafts'>> & {
  bend?: BearingName
  changes?: Partial<ShaftSpec>[]
}

/** The machines of the terminal, in walking order within their areas. */
export const machineSpecs: readonly MachineSpec[] = [
  ...[1, 2, 3, 4].map((n) =>
    conveyor('RP', n, `Pit conveyor ${n}`, ['22224', '22220'], 52, {
      kind: 'drag conveyor',
      meter: n < 4,
      hoursPerDay: 9,
    }),
  ),
  elevator('ET', 1, 'Elevator 1', ['22228', '22222'], { hoursPerDay: 12 }),
  elevator('ET', 2, 'Elevator 2', ['22228', '22222'], {
    hoursPerDay: 12,
    exchange: { daysAgo: 940, newMeterShowsHours: 0 },
  }),
  elevator('ET', 3, 'Elevator 3', ['22324', '22222'], { hoursPerDay: 11 }),
  elevator('ET', 4, 'Elevator 4', ['22324', '22222'], { hoursPerDay: 11 }),
  elevator('ET', 5, 'Dryer elevator', ['22224', '22220'], { hoursPerDay: 8, meter: false }),
  elevator('ET', 6, 'Spare elevator', ['22228', '22222'], { hoursPerDay: 1.5, standby: true, meter: false }),
  cleaner(1, 'Drum cleaner 1', {}),
  cleaner(2, 'Drum cleaner 2', { locating: 'both' }),
  conveyor('GA', 1, 'Gallery belt 1', ['22226', '22220'], 104, { bend: '22218' }),
  conveyor('GA', 2, 'Gallery belt 2', ['22226', '22220'], 104, {}),
  conveyor('GA', 3, 'Gallery belt 3', ['22228', '22222'], 98, { bend: '22220', hoursPerDay: 13 }),
  conveyor('GA', 4, 'Gallery belt 4', ['22226', '22220'], 104, {}),
  conveyor('GA', 5, 'Gallery belt 5', ['22228', '22222'], 98, { bend: '22220', hoursPerDay: 13 }),
  conveyor('GA', 6, 'Cross belt 6', ['22224', '22218'], 118, {}),
  conveyor('GA', 7, 'Cross belt 7', ['22224', '22218'], 118, { bend: '22218', meter: false, builtDaysAgo: 2080 }),
  conveyor('GA', 8, 'Silo belt 8', ['22226', '22222 normal'], 104, {
    meter: false,
    builtDaysAgo: 2080,
    changes: [{}, { locating: 'none' }],
  }),
  conveyor('GA', 9, 'Silo belt 9', ['22226', '22220'], 104, { bend: '22218', meter: false, builtDaysAgo: 1990 }),
  conveyor('GA', 10, 'Silo belt 10', ['22226', '22220'], 104, { meter: false, builtDaysAgo: 1990 }),
  fan('DR', 1, 'Supply fan 1', '22220 straight', 985, {}),
  fan('DR', 2, 'Exhaust fan 1', '22220', 985, {}),
  fan('DR', 3, 'Supply fan 2', '22220 straight', 985, {}),
  fan('DR', 4, 'Exhaust fan 2', '22220', 985, {}),
  fan('DR', 5, 'Cooling fan', '1218 ball', 1180, { meter: false }),
  conveyor('DR', 6, 'Hot grain conveyor', ['22220', '22218'], 58, {
    kind: 'drag conveyor',
    hoursPerDay: 8,
    meter: false,
  }),
  fan('AS', 1, 'Pit aspiration fan', '22218', 1475, {}),
  fan('AS', 2, 'Tower aspiration fan', '22218', 1475, {}),
  fan('AS', 3, 'Gallery aspiration fan', '22218', 1475, {}),
  fan('AS', 4, 'Cleaner aspiration fan', '22220', 1180, { meter: false, builtDaysAgo: 2080 }),
  fan('AS', 5, 'Quay aspiration fan', '22220', 1180, { meter: false, builtDaysAgo: 1990 }),
  {
    ...base('AS', 6, 'Dust screw', { kind: 'screw conveyor', meter: false, hoursPerDay: 11 }),
    shafts: [
      {
        ...shaft('SC', 'Screw', 64, '22218 normal', 0.08),
        locating: 'both',
        overrideReason: 'The far housing stands on springs that take the growth of the screw',
      },
    ],
  },
  conveyor('SL', 1, 'Boom belt', ['23136', '22226'], 96, { bend: '22222', hoursPerDay: 8 }),
  conveyor('SL', 2, 'Quay belt A', ['23134', '22222'], 100, { hoursPerDay: 9 }),
  conveyor('SL', 3, 'Quay belt B', ['22230', '22222'], 100, {
    hoursPerDay: 9,
    exchange: { daysAgo: 402, newMeterShowsHours: 1284 },
  }),
  conveyor('SL', 4, 'Shuttle belt', ['22224', '22220'], 112, { hoursPerDay: 7, meter: false, builtDaysAgo: 2080 }),
  conveyor('SL', 5, 'Transfer belt', ['22224', '22220'], 112, { hoursPerDay: 7, meter: false, builtDaysAgo: 220 }),
  elevator('SL', 6, 'Marine leg', ['22328', '23228'], {
    hoursPerDay: 7,
    band: 'own',
    changes: [{ attitude: 'inclined' }, {}],
  }),
  conveyor('BG', 1, 'Bag conveyor 1', ['22222', '22220'], 72, { hoursPerDay: 3, meter: false }),
  conveyor('BG', 2, 'Bag conveyor 2', ['22218', '22218'], 72, { hoursPerDay: 4, meter: false }),
]

function base(area: AreaCode, n: number, name: string, extra: Extra): Omit<MachineSpec, 'shafts'> {
  const { bend: _bend, changes: _changes, ...changed } = extra
  const tag = `${area}${String(n).padStart(2, '0')}`
  // the tower goes by one maker's chart, the quay by another's
  const band = area === 'ET' ? 'tarnbeck' : area === 'SL' ? 'lindmoor' : undefined
  return { area, tag, name, kind: 'belt conveyor', hoursPerDay: 11, meter: true, band, ...changed }
}

function shaft(code: string, name: string, speedRpm: number, bearing: BearingName, loadOverRating: number): ShaftSpec {
  return { code, name, speedRpm, bearing, loadOverRating }
}

function conveyor(
  area: AreaCode,
  n: number,
  name: string,
  [head, tail]: [BearingName, BearingName],
  speedRpm: number,
  extra: Extra,
): MachineSpec {
  const ends = [shaft('HD', 'Head', speedRpm, head, 0.115), shaft('TL', 'Tail', speedRpm, tail, 0.1)]
  const bend = extra.bend ? [shaft('BD', 'Bend', speedRpm * 1.4, extra.bend, 0.09)] : []
  return { ...base(area, n, name, extra), shafts: changed([...ends, ...bend], extra.changes) }
}

function elevator(
  area: AreaCode,
  n: number,
  name: string,
  [head, boot]: [BearingName, BearingName],
  extra: Extra,
): MachineSpec {
  const ends = [shaft('HD', 'Head', 58, head, 0.13), shaft('BT', 'Boot', 58, boot, 0.1)]
  return { ...base(area, n, name, { kind: 'bucket elevator', ...extra }), shafts: changed(ends, extra.changes) }
}

function cleaner(n: number, name: string, drive: Partial<ShaftSpec>): MachineSpec {
  const machine = base('CL', n, name, { kind: 'drum cleaner', meter: false, hoursPerDay: 10 })
  const shafts = [shaft('DM', 'Drum', 18, '23224', 0.14), shaft('DV', 'Drive', 240, '22218 normal', 0.08)]
  return { ...machine, shafts: changed(shafts, [{}, drive]) }
}

function fan(
  area: AreaCode,
  n: number,
  name: string,
  bearing: BearingName,
  speedRpm: number,
  extra: Extra,
): MachineSpec {
  const shafts = [shaft('FN', 'Fan', speedRpm, bearing, 0.065)]
  return { ...base(area, n, name, { kind: 'fan', ...extra }), shafts }
}

function changed(shafts: ShaftSpec[], changes: Partial<ShaftSpec>[] = []): ShaftSpec[] {
  return shafts.map((spec, index) => ({ ...spec, ...changes[index] }))
}
