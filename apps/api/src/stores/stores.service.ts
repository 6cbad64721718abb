import { createKit as createKitEndpoint, type Kit, type KitChange, type NewKit } from '@shaftbook/contract/kits'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import type { Scope, SiteTx } from '../db/database.ts'
import type { PageQuery } from '../db/list-page.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, notFound, versionStale } from '../domain-error.ts'
import * as store from './stores.store.ts'

export async function listKits({ db }: Context, scope: Scope, query: store.KitQuery) {
  return await db.readSite(scope, (sql) => store.listKits(sql, scope.siteId, query))
}

export async function readKit({ db }: Context, scope: Scope, id: string): Promise<Kit> {
  const kit = await db.readSite(scope, (sql) => store.findKit(sql, scope.siteId, id))
  if (!kit) throw notFound('kit')
  return kit
}

export async function createKit({ db }: Context, scope: Scope, body: z.output<typeof NewKit>): Promise<Kit> {
  return await db.withSite(scope, async (tx) => {
    if ((await receive(tx, createKitEndpoint.name, body.id, body)) === 'new') {
      await checkParts(tx, body.lines)
      await store.insertKit(tx, body)
    }
    return (await store.findKit(tx.sql, scope.siteId, body.id)) as Kit
  })
}

/** Changes a kit; lines, when given, replace the old ones in the order given. */
export async function changeKit(
  { db }: Context,
  scope: Scope,
  wanted: { id: string; version: number; change: z.output<typeof KitChange> },
): Promise<Kit> {
  const { id, version, change } = wanted
  return await db.withSite(scope, async (tx) => {
    const before = await store.findKit(tx.sql, scope.siteId, id)
    if (!before) throw notFound('kit')
    if (!(await store.updateKit(tx, id, version, { ...before, ...change }))) throw versionStale('kit', version)
    if (change.lines) {
      await checkParts(tx, change.lines)
      await store.replaceLines(tx, id, change.lines)
    }
    return (await store.findKit(tx.sql, scope.siteId, id)) as Kit
  })
}

/** The positions that a part belongs to, through their kits. */
export async function listPartUses({ db }: Context, scope: Scope, partId: string, query: PageQuery) {
  return await db.readSite(scope, async (sql) => {
    if (!(await store.partExists(sql, scope.siteId, partId))) throw notFound('part')
    return await store.listPartUses(sql, scope.siteId, partId, query)
  })
}

/** Names every line whose part is not in this site's list. */
async function checkParts(tx: SiteTx, lines: readonly store.NewKitLine[]): Promise<void> {
  const known = await store.knownParts(
    tx,
    lines.map((line) => line.partId),
  )
  const fields = lines.flatMap((line, index) =>
    known.has(line.partId) ? [] : [{ path: `lines.${index}.partId`, message: 'There is no such part at this site.' }],
  )
  if (fields.length === 0) return
  const places = fields.map((field) => Number(field.path.split('.')[1]) + 1)
  throw new DomainError(
    'not-found',
    `No part at this site for line ${places.join(', ')}: enter the part first.`,
    fields,
  )
}
