import type { MountSeen } from '@shaftbook/contract/mount-sheet'
import { fieldError } from '../domain-error.ts'
import { nmFromUm } from '../db/units.ts'
import type { Place } from '../meters/place.ts'
import type { MountBasis } from './fitting.ts'
import type { Seat } from './seat.store.ts'

/** What a sheet was filled by; what it does not say is not compared. */
export interface Seen {
  readonly leavingFitmentId?: string | null | undefined
  readonly seen?: MountSeen | undefined
}

/** Refuses to sign where band, least clearance or kit are not those that the sheet was filled by. */
export function checkSameLimits(place: Place, { bands }: MountBasis, { kit }: Seat, { seen }: Seen): void {
  if (!seen) return
  const { band, residualMinimum } = bands
  if (!sameUm(band?.minUm, seen.bandMinUm) || !sameUm(band?.maxUm, seen.bandMaxUm)) {
    const message = `The band at ${place.tag} is ${rangeOf(band?.minUm, band?.maxUm)} today, this sheet was judged by ${rangeOf(seen.bandMinUm, seen.bandMaxUm)}: look at the drive-up again, then sign by the band of today.`
    throw fieldError('band-changed', 'seen.bandMinUm', message)
  }
  if (!sameUm(residualMinimum?.minUm, seen.residualMinUm)) {
    const message = `The least clearance left at ${place.tag} is ${umOf(residualMinimum?.minUm)} today, this sheet was judged by ${umOf(seen.residualMinUm)}: look at the readings again, then sign by the minimum of today.`
    throw fieldError('band-changed', 'seen.residualMinUm', message)
  }
  const anotherKit = seen.kitId !== undefined && seen.kitId !== (kit?.id ?? null)
  if (anotherKit || (kit?.version ?? null) !== seen.kitVersion) {
    const filledBy = `${kitOf(seen.kitVersion)}${anotherKit && seen.kitVersion !== null ? ' of another kit' : ''}`
    const message = `The kit at ${place.tag} is ${kitOf(kit?.version, kit?.name)} today, this sheet was filled by ${filledBy}: look at the kit check again, then sign by the kit of today.`
    throw fieldError('kit-changed', 'seen.kitVersion', message)
  }
}

type Um = number | null | undefined

function sameUm(one: Um, other: Um): boolean {
  return nmFromUm(one ?? null) === nmFromUm(other ?? null)
}

function rangeOf(minUm: Um, maxUm: Um): string {
  return minUm == null || maxUm == null ? 'not known' : `${minUm} to ${maxUm} µm`
}

function umOf(um: Um): string {
  return um == null ? 'not known' : `${um} µm`
}

function kitOf(version: Um, name?: string): string {
  if (version == null) return 'none'
  return name === undefined ? `version ${version}` : `version ${version} of ${name}`
}
