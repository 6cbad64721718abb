import { bandOfPosition } from '@shaftbook/contract/band-of-position'
import type { MountQuestion } from '@shaftbook/contract/judge-mount'
import type { MountedBearing } from '@shaftbook/contract/mounts'
import type { z } from 'zod'
import { fieldError, notFound } from '../domain-error.ts'
import type { Place } from '../meters/place.ts'
import type { Work } from '../meters/work.ts'
import { loadSite } from '../bookkeeping/site.ts'
import { addBearing, describeBearing, findBearing, findFitting, type FittingType } from './fitting.store.ts'

/** Where a mount record names the type of its bearing. */
const typePath = 'bearing.bearingTypeId'

type Bearing = z.output<typeof MountedBearing>

/** What a mount at a position is judged by: the bearing that goes on, the band for it and the site's settings. */
export interface MountBasis extends Pick<MountQuestion, 'bands' | 'settings'> {
  readonly type: FittingType
  readonly planned: FittingType
}

/** Finds what a mount of this type at this position is judged by. */
export async function basisOf(work: Work, place: Place, bearingTypeId: string, path = typePath): Promise<MountBasis> {
  const { position, chart, type, planned } = await findFitting(work.tx, place.positionId, bearingTypeId)
  if (!type) throw notFound('bearing type', path)
  const { settings } = await loadSite(work.tx, work.now)
  return { type, planned, bands: bandOfPosition(position, type, chart), settings }
}

/** The same basic code on the same taper goes on; anything else needs another position in the register. */
export function checkGoesOn(place: Place, { type, planned }: MountBasis, path = typePath): void {
  if (type.basicCode === planned.basicCode && type.taper === planned.taper) return
  const why =
    type.basicCode === planned.basicCode
      ? `its bore is ${boreName(type)}, the position takes ${boreName(planned)}`
      : `the position takes a ${planned.basicCode}`
  const message = `${type.designation} does not go on at ${place.tag}: ${why}. Take a ${planned.designation}, or ask the engineer.`
  throw fieldError('not-allowed-here', path, message)
}

function boreName({ taper }: FittingType): string {
  return taper === null ? 'cylindrical' : `tapered ${taper}`
}

/** Another clearance class than the planned one is the engineer's to decide. */
export function checkClass(work: Work, { type, planned }: MountBasis): void {
  if (type.clearanceClass === planned.clearanceClass || work.role === 'engineer' || work.role === 'manager') return
  const message = `${type.designation} has clearance class ${type.clearanceClass}, the position takes ${planned.clearanceClass}: only the engineer may sign this.`
  throw fieldError('not-allowed-here', 'bearing.bearingTypeId', message)
}

/** Registers the bearing that goes on, or fills in what is known of it as long as it never was fitted. */
export async function registerBearing(work: Work, bearing: Bearing): Promise<void> {
  const known = await findBearing(work.tx, bearing.id)
  if (!known) return await addBearing(work.tx, bearing)
  if (known.bearingTypeId !== bearing.bearingTypeId) {
    const message = `This bearing is registered as ${known.designation}: choose that type, or enter a new bearing.`
    throw fieldError('not-allowed-here', 'bearing.bearingTypeId', message)
  }
  if (!known.everFitted) await describeBearing(work.tx, bearing)
}

/** Refuses a bearing that is in another position at present. */
export async function checkFree(work: Work, place: Place, bearingId: string): Promise<void> {
  const fittedAt = (await findBearing(work.tx, bearingId))?.fittedAt
  if (!fittedAt || fittedAt.positionId === place.positionId) return
  const message = `This bearing is fitted at ${fittedAt.tag}: log its removal there first, or choose another bearing.`
  throw fieldError('bearing-fitted-elsewhere', 'bearing.id', message)
}
