import { boltBySize } from '@shaftbook/standards/bolts'
import { InputError, requireWithin } from './input-error.ts'
import { certaintyCautions, noAnswer, standardRow, type NoAnswer, type Sourced } from './source.ts'

/** Nut factor K by the state of the thread. */
export const nutFactors = Object.freeze({ dry: 0.2, oiled: 0.16, moly: 0.12 })
export type ThreadState = keyof typeof nutFactors

/** Exactly 1.355817948… N·m; the trade writes 1.35582. */
export const newtonMetresPerPoundFoot = 1.35582

export interface CapBoltTorque extends Sourced {
  found: true
  torqueNm: number
  torqueLbFt: number
  nutFactor: number | null
  preloadKn: number | null
  /** Tightening steps in N·m: 30, 60 and 100 %. */
  stepsNm: number[]
  /** A recorded torque within these counts: ±5 %. */
  fromNm: number
  toNm: number
}

const boltTable = 'ISO 898-1; SAE J429 / ASTM A449 / A354, bolts'

/**
 * Torque of a cap bolt: T = K · F · d with the preload F = 0.75 · proof stress · stress area; K 0.20 dry, 0.16 light oil,
 * 0.12 moly paste. In three steps crosswise. The housing maker's own figure wins: use makerTorque for it. R-BOLT.
 */
export function capBoltTorque(size: string, propertyClass: string, state: ThreadState): CapBoltTorque | NoAnswer {
  const lookup = boltBySize(size, propertyClass)
  if (!lookup.found) return noAnswer(lookup.reason, boltTable, 'R-BOLT')
  const { proofMpa, stressAreaMm2, diameterMm } = lookup.row
  const preloadN = 0.75 * proofMpa * stressAreaMm2
  const source = standardRow(lookup, `${size}, ${propertyClass}`)
  const result = torque((nutFactors[state] * preloadN * diameterMm) / 1000)
  const cautions = [
    ...certaintyCautions(source),
    'Cast iron threads and used bolts: never above the housing maker’s figure.',
  ]
  return { ...result, nutFactor: nutFactors[state], preloadKn: preloadN / 1000, source, cautions }
}

/** The housing maker's torque in N·m (1 to 20 000) with our steps and window; it wins over the formula. R-BOLT. */
export function makerTorque(torqueNm: number, title: string): CapBoltTorque {
  requireWithin(torqueNm, 'torqueNm', 1, 20_000, 'N·m')
  const source = { kind: 'maker-chart', title, edition: null, row: null, certainty: null } as const
  return { ...torque(torqueNm), nutFactor: null, preloadKn: null, source, cautions: [] }
}

/** Order of the bolts, crosswise, numbered round the circle from 1. 2 to 24 bolts. R-BOLT. */
export function tighteningOrder(bolts: number): number[] {
  requireWithin(bolts, 'bolts', 2, 24, 'bolts')
  if (!Number.isInteger(bolts))
    throw new InputError('not-a-number', 'bolts', 'The number of bolts has to be a whole one.')
  const half = Math.ceil(bolts / 2)
  const starts = [...evens(half), ...evens(half - 1).map((at) => at + 1)].filter((at) => at < half)
  return starts.flatMap((at) => [at, at + half].filter((place) => place < bolts)).map((place) => place + 1)
}

/** Whether a recorded torque counts: within ±5 % of the target. R-BOLT. */
export function torqueCounts(recordedNm: number, target: Pick<CapBoltTorque, 'fromNm' | 'toNm'>): boolean {
  requireWithin(recordedNm, 'recordedNm', 0, 20_000, 'N·m')
  return recordedNm + 1e-9 >= target.fromNm && recordedNm - 1e-9 <= target.toNm
}

function torque(torqueNm: number): Omit<CapBoltTorque, 'nutFactor' | 'preloadKn' | 'source' | 'cautions'> {
  return {
    found: true,
    torqueNm,
    torqueLbFt: torqueNm / newtonMetresPerPoundFoot,
    stepsNm: [0.3, 0.6, 1].map((part) => part * torqueNm),
    fromNm: 0.95 * torqueNm,
    toNm: 1.05 * torqueNm,
    rule: 'R-BOLT',
  }
}

function evens(below: number): number[] {
  return Array.from({ length: Math.ceil(below / 2) }, (_, index) => index * 2)
}
