import { v7 as uuidv7 } from 'uuid'
import { settleChange } from '../grease-changes/settle-change.ts'
import type { Place } from '../meters/place.ts'
import type { RunHoursAt } from '../meters/run-hours.ts'
import type { Work } from '../meters/work.ts'
import { addGreasing, findInitialFill, type InitialFillRow } from './greasing.store.ts'
import { checkedRow, type GreasingSheet } from './checked-greasing.ts'

export interface InitialFill extends GreasingSheet {
  readonly greasedAt: Date
  readonly hours: RunHoursAt
}

/** Writes down the first fill of a bearing that is just being mounted; the mount brings the position up to date. */
export async function signInitialFill(work: Work, place: Place, fill: InitialFill): Promise<void> {
  const row = await checkedRow(work, place, { ...fill, task: 'regrease', kind: 'initial-fill' })
  await addGreasing(work.tx, { ...row, id: uuidv7() })
  await settleChange(work, place.positionId)
}

export interface CorrectedFill {
  /** When the mount was said to have been before it was corrected, and at which hours of the machine. */
  readonly before: { readonly at: Date; readonly runHours: number | null }
  readonly greasedAt: Date
  /** The hours as the correction has them; null where they stay as they were. */
  readonly hours: RunHoursAt | null
  readonly fill: GreasingSheet | null
  readonly reason: string
}

/** Lets the first fill follow a corrected mount: its time, hours, grease and amount, or that there was none. */
export async function correctInitialFill(work: Work, place: Place, corrected: CorrectedFill): Promise<void> {
  const { before, greasedAt, fill, reason } = corrected
  const known = await findInitialFill(work.tx, place.positionId, before.at)
  if (!known) {
    const hours = corrected.hours ?? ({ totalHours: null, source: 'none' } as const)
    if (fill) await signInitialFill(work, place, { ...fill, greasedAt, hours })
    return
  }
  const { greaseId, doseG, note, runHours, hoursSource } = known
  // a fill whose hours were corrected by themselves keeps them
  const follows = corrected.hours !== null && runHours === before.runHours
  const hours = follows ? corrected.hours : { totalHours: runHours, source: hoursSource }
  if (fill && hours.totalHours === runHours && agrees(known, fill, greasedAt)) return
  const told = fill ?? { greaseId, doseG, meterShowsHours: null, note }
  const withdrawn = fill === null
  const row = await checkedRow(work, place, {
    ...told,
    task: 'regrease',
    kind: 'initial-fill',
    greasedAt,
    hours,
    signedGreaseId: greaseId,
    withdrawn,
  })
  await addGreasing(work.tx, { ...row, id: uuidv7(), correctsId: known.id, correctionReason: reason, withdrawn })
}

function agrees(known: InitialFillRow, fill: GreasingSheet, greasedAt: Date): boolean {
  const sameGrease = fill.greaseId === null || fill.greaseId === known.greaseId
  return sameGrease && fill.doseG === known.doseG && greasedAt.getTime() === known.greasedAt.getTime()
}
