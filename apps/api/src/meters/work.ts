import type { Role } from '@shaftbook/contract/roles'
import type { SiteMembership } from '../access/session.ts'
import type { Context } from '../context.ts'
import type { Scope, SiteTx } from '../db/database.ts'
import { fieldError } from '../domain-error.ts'
import { plantDay } from '@shaftbook/contract/time-zone'

/** Who works at the shaft, and when: what every act there starts from. */
export interface Worker {
  readonly scope: Scope
  readonly site: SiteMembership
}

/** An act under way: its transaction, its moment and who does it. */
export interface Work {
  readonly tx: SiteTx
  readonly now: Date
  readonly personId: string
  readonly role: Role
  readonly timeZone: string
}

/** Does one act at the shaft in one transaction: all of it stands, or nothing. */
export function doWork<T>({ db, now }: Context, { scope, site }: Worker, act: (work: Work) => Promise<T>): Promise<T> {
  const { personId } = scope
  if (personId === null) throw new TypeError('an act at the shaft has a person')
  return db.withSite(scope, (tx) => act({ tx, now: now(), personId, role: site.role, timeZone: site.timeZone }))
}

const clockDifferenceMs = 5 * 60_000

/** The moment that was entered. A clock a few minutes ahead is set right; a later moment is refused. */
export function momentOf(work: Work, entered: string, path: string): Date {
  const at = new Date(entered)
  if (at.getTime() > work.now.getTime() + clockDifferenceMs) {
    throw fieldError('date-in-future', path, 'This lies in the future: enter when it was done.')
  }
  return at > work.now ? work.now : at
}

/** The day at the plant, as it is written in sentences. */
export function dayOf(work: Work, at: Date): string {
  return plantDay(at, work.timeZone)
}
