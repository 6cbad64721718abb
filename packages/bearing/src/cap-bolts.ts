import { capBoltTorque, makerTorque, tighteningOrder, type CapBoltTorque, type ThreadState } from './bolts.ts'
import type { NoAnswer } from './source.ts'

export type CapBolts = CapBoltTorque & {
  /** What the formula alone gives, where the maker's figure is used; null where it is not known. */
  formulaNm: number | null
  /** Bolts in the order of tightening, numbered round the circle; empty where their number was not given. */
  order: number[]
}

export interface CapBoltsInput {
  size: string
  propertyClass: string
  state: ThreadState
  /** The housing maker's figure: it wins over the formula. */
  makerNm?: number | null
  bolts?: number | null
}

/** Torque, steps and order of a cap's bolts: the housing maker's figure wins and is labelled, else the formula. R-BOLT. */
export function capBolts(input: CapBoltsInput): CapBolts | NoAnswer {
  const order = typeof input.bolts === 'number' ? tighteningOrder(input.bolts) : []
  const computed = capBoltTorque(input.size.trim(), input.propertyClass.trim(), input.state)
  if (typeof input.makerNm !== 'number') return computed.found ? { ...computed, formulaNm: null, order } : computed
  const maker = makerTorque(input.makerNm, 'the housing maker’s figure')
  const formulaNm = computed.found ? computed.torqueNm : null
  const above =
    formulaNm !== null && input.makerNm > formulaNm * 1.05
      ? [`The maker’s figure is above what the formula gives (${Math.round(formulaNm)} N·m): read it again.`]
      : []
  return { ...maker, formulaNm, order, cautions: [...maker.cautions, ...above] }
}
