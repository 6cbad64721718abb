import type { RemovalRow } from '../builders/record-rows.ts'
import type { Random } from '../random.ts'
import type { Place } from './plant.ts'
import type { AreaCode, truth } from './truth.ts'

export type StayOutcome = keyof typeof truth.mountRate
export type Ending = Pick<RemovalRow, 'endKind' | 'modeClause' | 'cause' | 'detection' | 'evidence'>

/** What wore on a bearing that failed: its mount, and which part of its life went while grease was late. */
export interface Wear {
  outcome: StayOutcome
  lateGreaseShare: number
  standby: boolean
  machineKind: string
}

const dust: Record<AreaCode, number> = { RP: 3, ET: 2, CL: 1.5, GA: 2, DR: 0.5, AS: 2, SL: 2, BG: 0.3 }
const wet: Record<AreaCode, number> = { RP: 1, ET: 0.2, CL: 0.1, GA: 0.3, DR: 0.1, AS: 0.2, SL: 1.5, BG: 0.1 }
const heard = ['vibration round', 'noise', 'temperature'] as const

/** Why a bearing failed: a mode by its clause of ISO 15243 with cause and evidence, the likelier the more it was provoked. */
export function failureOf(random: Random, place: Place, wear: Wear): Ending {
  const { outcome, lateGreaseShare, standby, machineKind } = wear
  const area = place.area.code
  const modes: [Omit<Ending, 'endKind' | 'detection'>, number][] = [
    [mode('5.1.2', 'Life used up', 'Ragged spall in the loaded zone, flakes in the grease'), 3],
    [mode('5.1.2', 'Driven up too far', 'Ran hot since the mount, spalls all round the inner ring'), hot(outcome)],
    [
      mode('5.1.3', 'Regreasing late or missed', 'Frosted raceways, fine pitting, dark dry grease'),
      0.7 + 14 * lateGreaseShare,
    ],
    [mode('5.2.2', 'Dust past the seals', 'Dull grey raceways, gritty grease, clearance grown'), dust[area]],
    [mode('5.5.3', 'Dirt in the housing', 'Dents of all sizes round the track'), dust[area] / 4],
    [mode('5.3.2', 'Water in the housing', 'Rust at roller spacing, milky grease'), wet[area]],
    [
      mode('5.3.3.2', 'Driven up too little, sleeve crept', 'Red-brown powder in the bore'),
      outcome === 'under' ? 8 : 0.2,
    ],
    [mode('5.3.3.3', 'Stood still next to running machines', 'Hollows at roller spacing'), standby ? 6 : 0],
    [mode('5.4.3', 'Current through the bearing', 'Grey track with flutes'), machineKind === 'fan' ? 0.8 : 0],
    [
      mode('5.5.2', 'Bucket jammed', 'Dents at roller spacing with raised rims'),
      machineKind === 'bucket elevator' ? 0.6 : 0,
    ],
    [mode('5.6.3', 'Crack through the inner ring', 'Axial crack with beach marks'), outcome === 'over' ? 1.2 : 0.1],
    [{ modeClause: null, cause: 'Scrapped before anyone looked', evidence: '' }, 0.3],
  ]
  return { endKind: 'failed', detection: random.pick(heard), ...random.weighted(modes) }
}

function hot(outcome: StayOutcome): number {
  return outcome === 'over' ? 9 : outcome === 'thin' ? 7 : 0.2
}

function mode(modeClause: string, cause: string, evidence: string): Omit<Ending, 'endKind' | 'detection'> {
  return { modeClause, cause, evidence }
}

/** A bearing that was taken out although it had not failed: in an analysis its life is suspended. */
export function takenOut(cause: string): Ending {
  return { endKind: 'not-failed', modeClause: null, cause, detection: 'planned', evidence: '' }
}
