import { clearanceRange } from '@shaftbook/bearing/clearance'
import { bandOfPosition, type PositionBand } from '@shaftbook/contract/band-of-position'
import type { MakerChart } from '@shaftbook/contract/maker-charts'
import type { PositionOverview } from '@shaftbook/contract/position-views'

type Position = PositionOverview['position']
export type BearingType = PositionOverview['bearingType']

/** What the gauge measures against, each with its source. */
export interface PlaceLimits extends PositionBand {
  readonly classUm: { readonly minUm: number; readonly maxUm: number } | null
}

/** Band, residual minimum and class range of a bearing type at a position. R-CL1. */
export function limitsAt(position: Position, type: BearingType, chart: MakerChart | null): PlaceLimits {
  const bore = type.taper === null ? 'cylindrical' : 'tapered'
  const range = clearanceRange(type.boreMm, bore, type.clearanceClass)
  return { ...bandOfPosition(position, type, chart), classUm: range.found ? range.range : null }
}
