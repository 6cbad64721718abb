import type { bearingTypes, positions, shafts } from '@shaftbook/contract/register-tables'
import { engineering, type Role } from '@shaftbook/contract/roles'
import type { z } from 'zod'
import { nmFromUm } from '../db/units.ts'
import { DomainError, fieldError } from '../domain-error.ts'
import type { Written } from './table.ts'

type Type = z.output<typeof bearingTypes.New>
type Position = z.output<typeof positions.New>
type Shaft = z.output<typeof shafts.New>

/** A ring is larger outside than inside. */
export function checkBearingType({ after }: Written<Type>): void {
  if (after.outsideDiameterMm > after.boreMm) return
  throw fieldError(
    'not-allowed-here',
    'outsideDiameterMm',
    `The outside diameter (${after.outsideDiameterMm} mm) has to be larger than the bore (${after.boreMm} mm).`,
  )
}

/** Leaving a shaft with no or several locating positions alone needs a reason in words. R-LOC. */
export function checkShaft({ after }: Written<Shaft>): void {
  const reason = after.locatingOverrideReason
  if (reason === null || reason.length >= 3) return
  throw fieldError(
    'reason-missing',
    'locatingOverrideReason',
    'Say in a few words why this shaft may have no or several locating positions, or leave the reason out.',
  )
}

/** A position's own band is complete: both limits in order, and where it comes from. */
export function checkPosition({ after, now }: Written<Position>): void {
  checkOwnBand(after)
  if (after.ownResidualMinUm !== null && after.ownResidualMinUm < 0) {
    throw fieldError('not-allowed-here', 'ownResidualMinUm', 'The residual minimum is a clearance: 0 µm or more.')
  }
  if (after.retiredAt !== null && new Date(after.retiredAt) > now) {
    throw fieldError('date-in-future', 'retiredAt', 'A position is retired today or earlier, not in the future.')
  }
}

function checkOwnBand({ ownReductionMinUm: min, ownReductionMaxUm: max, ownBandSource: source }: Position): void {
  if (min === null && max === null && source === null) return
  const missing = [
    ...(min === null ? ['ownReductionMinUm'] : []),
    ...(max === null ? ['ownReductionMaxUm'] : []),
    ...(source === null || source === '' ? ['ownBandSource'] : []),
  ]
  if (missing.length > 0) {
    const message =
      'A band of its own needs the least and the most reduction and where they come from: give all three, or none.'
    throw new DomainError(
      'not-allowed-here',
      message,
      missing.map((path) => ({ path, message: 'is missing for a band' })),
    )
  }
  // compared as they are stored, to the nanometre
  if (min !== null && max !== null && (nmFromUm(min) <= 0 || nmFromUm(max) <= nmFromUm(min))) {
    throw fieldError(
      'not-allowed-here',
      'ownReductionMaxUm',
      `A band runs from a smaller to a larger reduction above 0: ${min} to ${max} µm does not.`,
    )
  }
}

/** Signed records go by the type of a bearing that was fitted: only the engineer says that it was another. */
export function checkMayRetype(role: Role | undefined): void {
  if (role !== undefined && engineering.some((allowed) => allowed === role)) return
  const message = 'This bearing was fitted, and its mount record goes by its type: ask the engineer to change the type.'
  throw fieldError('role-not-allowed', 'bearingTypeId', message)
}

/** A position that carries a bearing stays in the book until the bearing is out. */
export function checkRetirable(occupied: boolean): void {
  if (!occupied) return
  throw fieldError(
    'not-allowed-here',
    'retiredAt',
    'A bearing is still fitted at this position: log its removal first, then retire the position.',
  )
}

/** A bearing whose hours count on the meter of its machine stays at that machine: another meter would give it another life. */
export function checkMovable(tagsWithHours: readonly string[], path: string): void {
  const [tag] = tagsWithHours
  if (tag === undefined) return
  const message = `The hours of the bearing at ${tag} count on the hour meter of its machine: log its removal first, then move it, then mount it again.`
  throw fieldError('not-allowed-here', path, message)
}

/** A meter that was read stays at its machine: its readings are that machine's hours. */
export function checkMeterMovable(read: boolean): void {
  if (!read) return
  const message =
    'This meter was read at its machine and its readings stay there: register another meter for the other machine.'
  throw fieldError('not-allowed-here', 'machineId', message)
}
