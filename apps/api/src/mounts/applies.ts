import type { MountRecord } from '@shaftbook/contract/mounts'
import type { FieldFault } from '@shaftbook/contract/problem'
import { DomainError } from '../domain-error.ts'
import type { FittingType } from './fitting.store.ts'
import type { Seat } from './seat.store.ts'

/** What a sheet says of a seat: only some of it applies to each. */
type Told = Pick<
  MountRecord,
  'ringCount' | 'ringWidthMm' | 'sleeveCode' | 'driveUpMm' | 'nutAngleDeg' | 'readings' | 'details'
>

/**
 * Refuses to sign a sheet that tells of what is not there: rings where the shaft is not located, a drive-up without a
 * taper, a sleeve where none goes on. Nothing of it is thrown away unseen; what was found before stands in "as found".
 */
export function checkApplies(told: Told, { position }: Seat, { taper }: FittingType): void {
  const faults = [
    ...(position.locating ? [] : ringFaults(told, position.tag)),
    ...(taper === null || position.seat === 'cylindrical' ? driveFaults(told, position.tag) : []),
    ...(position.seat.endsWith('sleeve') ? [] : sleeveFaults(told, position.tag)),
  ]
  const [first] = faults
  if (first) throw new DomainError('not-allowed-here', first.message, faults)
}

function ringFaults({ ringCount, ringWidthMm, details }: Told, tag: string): FieldFault[] {
  const message = `${tag} does not locate the shaft: no ring goes in there. Take the rings out of the sheet, or have the engineer mark the position as locating.`
  return faultsAt(message, {
    ringCount: ringCount !== null && ringCount > 0,
    ringWidthMm: ringWidthMm !== null,
    'details.rings.placed': (details.rings?.placed ?? null) !== null,
  })
}

function driveFaults({ driveUpMm, nutAngleDeg, readings, details }: Told, tag: string): FieldFault[] {
  const message = `The bearing at ${tag} sits on no taper: there is no drive-up. Take it out of the sheet.`
  return faultsAt(message, {
    driveUpMm: driveUpMm !== null,
    nutAngleDeg: nutAngleDeg !== null,
    'details.driveSteps': details.driveSteps.length > 0,
    readings: readings.some(({ moment }) => moment === 'step'),
  })
}

function sleeveFaults({ sleeveCode }: Told, tag: string): FieldFault[] {
  const message = `${tag} has no sleeve seat: no sleeve goes on there. Take the sleeve out of the sheet.`
  return faultsAt(message, { sleeveCode: sleeveCode !== null })
}

function faultsAt(message: string, given: Readonly<Record<string, boolean>>): FieldFault[] {
  return Object.entries(given).flatMap(([path, isGiven]) => (isGiven ? [{ path, message }] : []))
}
