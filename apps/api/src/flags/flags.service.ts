import { addDays } from '@shaftbook/bearing/plain-date'
import type { Flag } from '@shaftbook/contract/flags'
import type { Context } from '../context.ts'
import type { Scope } from '../db/database.ts'
import { DomainError, fieldError, notFound, versionStale } from '../domain-error.ts'
import { plantDay } from '@shaftbook/contract/time-zone'
import * as store from './flags.store.ts'

const longestPutOffDays = 366

export async function listFlags({ db, now }: Context, scope: Scope, timeZone: string, query: store.FlagQuery) {
  const today = plantDay(now(), timeZone)
  return await db.readSite(scope, (sql) => store.listFlags(sql, scope.siteId, query, today))
}

export async function countFlags({ db, now }: Context, scope: Scope, timeZone: string) {
  const byKind = await db.readSite(scope, (sql) => store.countFlags(sql, scope.siteId, plantDay(now(), timeZone)))
  const sum = (numbers: number[]): number => numbers.reduce((total, number) => total + number, 0)
  return {
    open: sum(byKind.map((row) => row.open)),
    putOff: sum(byKind.map((row) => row.putOff)),
    byKind: byKind.filter((row) => row.open > 0).map(({ kind, open }) => ({ kind, open })),
  }
}

export async function readFlag({ db }: Context, scope: Scope, id: string): Promise<Flag> {
  const flag = await db.readSite(scope, (sql) => store.findFlag(sql, scope.siteId, id))
  if (!flag) throw notFound('flag')
  return flag
}

/** Takes a flag off the open list until a day of the plant, with the reason; on that day it is open again. */
export async function putOffFlag(
  { db, now }: Context,
  scope: Scope,
  timeZone: string,
  wanted: { id: string; version: number; until: string; reason: string },
): Promise<Flag> {
  const { id, version, until, reason } = wanted
  checkPutOffUntil(until, plantDay(now(), timeZone))
  return await db.withSite(scope, async (tx) => {
    const flag = await store.findFlag(tx.sql, scope.siteId, id)
    if (!flag) throw notFound('flag')
    if (flag.clearedAt !== null) {
      throw new DomainError(
        'flag-already-cleared',
        `This flag is cleared already (${flag.clearedHow}): nothing is left to put off.`,
      )
    }
    if (!(await store.putOff(tx, { id, version, until, reason }))) throw versionStale('flag', version)
    return (await store.findFlag(tx.sql, scope.siteId, id)) as Flag
  })
}

/** Refuses to put anything off until a day that is not ahead, or for longer than a year. */
export function checkPutOffUntil(until: string, today: string): void {
  if (until <= today) {
    throw fieldError('not-allowed-here', 'until', `Put the flag off until a day after today (${today}).`)
  }
  const latest = addDays(today, longestPutOffDays)
  if (until > latest) {
    throw fieldError('not-allowed-here', 'until', `A flag is put off for a year at most: until ${latest} or earlier.`)
  }
}
