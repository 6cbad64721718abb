import type { ClassRange } from '@shaftbook/standards/clearance-classes'
import { halfOfBand, type Band, type ResidualMinimum } from './band.ts'
import type { BladeStack } from './feeler-blades.ts'
import { toNanometres, umFromNanometres } from './units.ts'
import type { VerdictSettings } from './verdict.ts'

/** A range of reductions in µm and its middle. */
export interface Aim {
  minUm: number
  maxUm: number
  middleUm: number
}

/** Where a drive-up may stop, in reductions of the clearance (µm) and in clearances that are left (µm). */
export interface DriveUpWindow {
  /**
   * Least reduction that is accepted by the site's rule (R-U): the band's edge, by the proven rule a guard further in, unless
   * that leaves less than the residual minimum.
   */
  nearUm: number
  /** Largest reduction that is accepted and still leaves the residual minimum as read. */
  farUm: number
  farBy: 'band' | 'residual'
  /** The band is not narrower than 2 U: there are readings that prove it. Where not, the window is the band as read. */
  provable: boolean
  /** Reduction that leaves exactly the residual minimum as read, or no clearance at all where there is no minimum. */
  roomUm: number
  /** The residual minimum is reached before the band is: no reduction meets both. */
  noRoom: boolean
  half: 'lower' | 'upper' | 'either'
  /** The part of the window to aim at (R-HALF), kept clear of the residual minimum; null without room. */
  aim: Aim | null
  /** Clearance left at the near edge, the larger one. */
  topUm: number
  /** Clearance left at the far edge, not below nothing. */
  bottomUm: number
}

export interface WindowInput {
  benchUm: number
  band: Band
  residualMinimum: ResidualMinimum | null
  /** Range of the bearing's class, for the half to aim at; null where no table has one. */
  range: ClassRange | null
  /** U of the reduction and of the mounted clearance, µm. */
  expandedDifferenceUm: number
  expandedMountedUm: number
  settings: Pick<VerdictSettings, 'reductionRule' | 'residualRule'>
}

/** Where to stop and what to aim at, from bench clearance, band and residual minimum. All µm. R-RED, R-HALF, R-RES, R-U. */
export function driveUpWindow(input: WindowInput): DriveUpWindow {
  const { band, settings } = input
  const [bench, min, max, guard] = [input.benchUm, band.minUm, band.maxUm, input.expandedDifferenceUm].map(nm) as [
    number,
    number,
    number,
    number,
  ]
  const provable = max - min >= 2 * guard
  const inset = settings.reductionRule === 'proven' && provable ? guard : 0
  const room = bench - nm(input.residualMinimum?.minUm ?? 0)
  const noRoom = room < min
  const near = noRoom ? min + inset : Math.min(min + inset, room)
  const bandFar = max - inset
  const far = noRoom ? bandFar : Math.min(bandFar, room)
  const { half, aim } = aimOf(input, near, far, noRoom ? null : provenRoom(input, room, near))
  return {
    nearUm: umFromNanometres(near),
    farUm: umFromNanometres(far),
    farBy: far < bandFar ? 'residual' : 'band',
    provable,
    roomUm: umFromNanometres(room),
    noRoom,
    half,
    aim,
    topUm: umFromNanometres(Math.max(0, bench - near)),
    bottomUm: umFromNanometres(Math.max(0, bench - far)),
  }
}

/** What tells by feelers that the window is reached: a stack that still goes, and one that goes no longer. */
export interface FeelerTarget {
  /** Thinnest stack of the set inside the window: it must still go. */
  goes: BladeStack
  /** Thickest stack of the set inside the window: it must go no longer. */
  stops: BladeStack
}

/**
 * The pair of stacks between which the clearance lies inside the window: the thinner goes, the thicker doesn't. null where
 * the set has no two thicknesses in the window. `stacks` from stacksOf, thinnest first.
 */
export function feelerTarget(
  window: Pick<DriveUpWindow, 'topUm' | 'bottomUm'>,
  stacks: readonly BladeStack[],
): FeelerTarget | null {
  const inside = stacks.filter(({ totalUm }) => nm(totalUm) >= nm(window.bottomUm) && nm(totalUm) <= nm(window.topUm))
  const [goes, stops] = [inside.at(0), inside.at(-1)]
  return goes && stops && goes !== stops ? { goes, stops } : null
}

/** The reduction up to which the residual minimum is met by the site's rule, where that leaves any of the window. */
function provenRoom({ settings, expandedMountedUm }: WindowInput, roomNm: number, nearNm: number): number {
  const proven = settings.residualRule === 'proven' ? roomNm - nm(expandedMountedUm) : roomNm
  return proven >= nearNm ? proven : roomNm
}

function aimOf(
  { benchUm, band, range }: WindowInput,
  nearNm: number,
  farNm: number,
  roomNm: number | null,
): Pick<DriveUpWindow, 'half' | 'aim'> {
  const advice = range ? halfOfBand(benchUm, range, band) : null
  const half = advice?.half ?? 'either'
  if (roomNm === null) return { half, aim: null }
  const within = (um: number): number => Math.min(Math.max(nm(um), nearNm), farNm)
  const high = Math.min(within(advice?.aimMaxUm ?? band.maxUm), roomNm)
  const low = Math.min(within(advice?.aimMinUm ?? band.minUm), high)
  const aim = {
    minUm: umFromNanometres(low),
    maxUm: umFromNanometres(high),
    middleUm: umFromNanometres(Math.round((low + high) / 2)),
  }
  return { half, aim }
}

function nm(um: number): number {
  return toNanometres(um, 'um')
}
