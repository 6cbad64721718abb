import type { IntervalLevels } from '@shaftbook/bearing/grease-interval'
import type { BearingTypeRow } from '../builders/catalogue-rows.ts'
import type { AreaCode } from './truth.ts'

export interface AreaSpec {
  code: AreaCode
  name: string
  walkingOrder: number
  climate: Pick<IntervalLevels, 'temperature' | 'dirt' | 'moisture' | 'vibration'>
  calendarMonths: number
  grease: 'Marl EP 2' | 'Marl HT 2' | 'Skerry WR 2'
}

export const areaSpecs: readonly AreaSpec[] = [
  area('RP', 'Receiving pits', 10, 6, 'Skerry WR 2', { dirt: 'light-abrasive', moisture: '80-to-90' }),
  area('ET', 'Elevator tower', 20, 9, 'Marl EP 2', { dirt: 'light-abrasive' }),
  area('CL', 'Cleaning floor', 30, 9, 'Marl EP 2', { dirt: 'heavy-soft', vibration: '5-to-10' }),
  area('GA', 'Conveyor galleries', 40, 9, 'Marl EP 2', { dirt: 'light-abrasive' }),
  area('DR', 'Dryer', 50, 6, 'Marl HT 2', { temperature: '65-to-80' }),
  area('AS', 'Aspiration', 60, 6, 'Marl HT 2', { dirt: 'heavy-soft', vibration: '5-to-10' }),
  area('SL', 'Ship loader and quay', 70, 6, 'Skerry WR 2', { dirt: 'light-abrasive', moisture: 'condensation' }),
  area('BG', 'Bagging hall', 80, 12, 'Marl EP 2', {}),
]

export interface BearingSpec {
  basicCode: string
  kind: BearingTypeRow['kind']
  taper: '1:12' | null
  clearanceClass: 'CN' | 'C3'
  housing: string | null
}

/** Bearings by a short name: the bore code, then how it sits. */
export const bearingSpecs = {
  '22218': srb('22218', 'SN518'),
  '22220': srb('22220', 'SN520'),
  '22222': srb('22222', 'SN522'),
  '22224': srb('22224', 'SN524'),
  '22226': srb('22226', 'SN526'),
  '22228': srb('22228', 'SN528'),
  '22230': srb('22230', 'SN530'),
  '23224': srb('23224', 'SN524'),
  '23228': srb('23228', 'SN528'),
  '22324': srb('22324', 'SN624'),
  '22328': srb('22328', 'SN628'),
  '23134': srb('23134', null),
  '23136': srb('23136', null),
  '22218 normal': { ...srb('22218', 'SN518'), clearanceClass: 'CN' },
  '22222 normal': { ...srb('22222', 'SN522'), clearanceClass: 'CN' },
  '22220 straight': { ...srb('22220', null), taper: null },
  '1218 ball': { ...srb('1218', null), kind: 'self-aligning-ball' },
} as const satisfies Record<string, BearingSpec>
export type BearingName = keyof typeof bearingSpecs

export interface ShaftSpec {
  code: string
  name: string
  speedRpm: number
  bearing: BearingName
  /** Equivalent load over dynamic rating, P/C. */
  loadOverRating: number
  /** Which ends hold the shaft axially; one is right. */
  locating?: 'drive' | 'none' | 'both'
  attitude?: 'horizontal' | 'inclined'
  overrideReason?: string
}

export interface MachineSpec {
  area: AreaCode
  tag: string
  name: string
  kind: string
  hoursPerDay: number
  standby?: boolean
  meter: boolean
  /** Days before today on which it was built, where that is within the register's time. */
  builtDaysAgo?: number
  /** Where the bands of its bearings come from; the generic guide if nothing is said. */
  band?: 'tarnbeck' | 'lindmoor' | 'own'
  /** The hour meter was exchanged. */
  exchange?: { daysAgo: number; newMeterShowsHours: number }
  shafts: readonly ShaftSpec[]
}

function area(
  code: AreaCode,
  name: string,
  walkingOrder: number,
  calendarMonths: number,
  grease: AreaSpec['grease'],
  harsher: Partial<AreaSpec['climate']>,
): AreaSpec {
  const mild = { temperature: 'below-65', dirt: 'light-soft', moisture: 'below-80', vibration: 'below-5' } as const
  return { code, name, walkingOrder, calendarMonths, grease, climate: { ...mild, ...harsher } }
}

function srb(basicCode: string, housing: string | null) {
  return { basicCode, kind: 'spherical-roller', taper: '1:12', clearanceClass: 'C3', housing } as const
}
