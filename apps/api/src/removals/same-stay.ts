import { fieldError } from '../domain-error.ts'
import type { Place } from '../meters/place.ts'
import { dayOf, type Work } from '../meters/work.ts'
import { bearingName } from './bearing-name.ts'
import type { OpenFitment } from './removals.store.ts'
import { findStaysSince, type SignedStay } from './stays-since.store.ts'

interface Begun {
  /** The stay that was open then; null: none was; undefined: it is not said, so that nothing is compared. */
  readonly leavingFitmentId: string | null | undefined
  readonly begun: 'sheet' | 'removal'
}

/** Refuses to sign where another bearing came or went since it was begun: says what, when and by whom. */
export async function checkSameStay(
  work: Work,
  place: Place,
  fitted: OpenFitment | undefined,
  { leavingFitmentId, begun }: Begun,
): Promise<void> {
  if (leavingFitmentId === undefined || leavingFitmentId === (fitted?.id ?? null)) return
  const stays = await findStaysSince(work.tx, place.positionId, leavingFitmentId)
  const happened = stays.map((stay) =>
    stay.id === leavingFitmentId ? leftSentence(work, stay) : cameSentence(work, stay),
  )
  const known = happened.length > 0 ? happened : [`the bearing that it was begun with was never at ${place.tag}`]
  const message = `${place.tag} has changed since this ${begun} was begun: ${known.join('; ')}. Look at what is fitted there now, then begin the ${begun} with that.`
  throw fieldError('position-changed', 'leavingFitmentId', message)
}

function leftSentence(work: Work, stay: SignedStay): string {
  const day = stay.removedAt ? ` on ${dayOf(work, stay.removedAt)}` : ''
  return `${bearingName(stay)} was taken out${day}, signed by ${stay.removedBy ?? 'nobody'}`
}

function cameSentence(work: Work, stay: SignedStay): string {
  return `${bearingName(stay)} was fitted on ${dayOf(work, stay.fittedAt)}, signed by ${stay.mountedBy ?? 'nobody'}`
}
