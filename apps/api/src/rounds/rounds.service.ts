import { createRound as createEndpoint, type NewRound, type Round, type RoundChange } from '@shaftbook/contract/rounds'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import type { Scope, SiteTx } from '../db/database.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, notFound, versionStale } from '../domain-error.ts'
import * as store from './rounds.store.ts'

/** Makes a round of stops in the order given. */
export async function createRound({ db }: Context, scope: Scope, body: NewRound): Promise<Round> {
  return await db.withSite(scope, async (tx) => {
    if ((await receive(tx, createEndpoint.name, body.id, body)) === 'new') {
      await checkStops(tx, body.stops)
      await store.insertRound(tx, body)
    }
    return (await store.findRound(tx.sql, scope.siteId, body.id)) as Round
  })
}

/** Changes what is given of a round; stops, when given, replace the old ones in the order given. */
export async function changeRound(
  { db }: Context,
  scope: Scope,
  wanted: { id: string; version: number; change: z.output<typeof RoundChange> },
): Promise<Round> {
  const { id, version, change } = wanted
  return await db.withSite(scope, async (tx) => {
    const before = await store.findRound(tx.sql, scope.siteId, id)
    if (!before) throw notFound('round')
    if (!(await store.updateRound(tx, { id, version }, { ...before, ...change }))) throw versionStale('round', version)
    if (change.stops) {
      await checkStops(tx, change.stops)
      await store.replaceStops(tx, id, change.stops)
    }
    return (await store.findRound(tx.sql, scope.siteId, id)) as Round
  })
}

/** Names every stop whose position is not at this site, or no more in use. */
export async function checkStops(tx: SiteTx, stops: readonly store.NewStop[]): Promise<void> {
  const usable = await store.usablePositions(
    tx,
    stops.map(({ positionId }) => positionId),
  )
  const fields = stops.flatMap(({ positionId }, index) =>
    usable.has(positionId)
      ? []
      : [{ path: `stops.${index}.positionId`, message: 'There is no such position in use at this site.' }],
  )
  if (fields.length === 0) return
  const numbers = fields.map(({ path }) => Number(path.split('.')[1]) + 1)
  const message = `Stop ${numbers.join(', ')} names no position that is in use at this site: take it out of the round.`
  throw new DomainError('not-found', message, fields)
}
