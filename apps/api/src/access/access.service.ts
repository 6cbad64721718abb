import {
  admitPerson as admitPersonEndpoint,
  type AuditEntry,
  type changeSite as changeSiteEndpoint,
  type Person,
  type Site,
  type SiteSettings,
} from '@shaftbook/contract/access'
import type { Role } from '@shaftbook/contract/roles'
import { isTimeZone } from '@shaftbook/contract/time-zone'
import type { z } from 'zod'
import type { Database, Scope } from '../db/database.ts'
import type { PageQuery } from '../db/list-page.ts'
import { receive } from '../db/receipts.ts'
import { fieldError, notFound } from '../domain-error.ts'
import * as store from './access.store.ts'
import { hashPassword } from './passwords.ts'

interface Page<Item> {
  items: Item[]
  nextCursor: string | null
}

export async function readSite(db: Database, scope: Scope): Promise<Site> {
  return await db.withSite(scope, (tx) => store.findSite(tx))
}

/** Changes the site. Due dates and flags follow the new settings with the next turn of the day, ten minutes away at most. */
export async function changeSite(
  db: Database,
  scope: Scope,
  change: z.output<typeof changeSiteEndpoint.body>,
): Promise<Site> {
  if (change.timeZone !== undefined) checkTimeZone(change.timeZone)
  return await db.withSite(scope, async (tx) => {
    await store.holdSite(tx)
    const settings = change.settings && { ...(await store.findSite(tx)).settings, ...change.settings }
    if (settings) checkSettings(settings)
    await store.updateSite(tx, { ...change, settings })
    return await store.findSite(tx)
  })
}

/** An interval is on time before it is missed. R-COMPL. */
function checkSettings({ greasingWindowPercent, missedBeyondPercent }: SiteSettings): void {
  if (missedBeyondPercent >= greasingWindowPercent) return
  const message = `An interval counts as missed (beyond ${missedBeyondPercent} %) no sooner than its window is over (${greasingWindowPercent} %): raise the one or lower the other.`
  throw fieldError('not-allowed-here', 'settings.missedBeyondPercent', message)
}

export async function listPeople(db: Database, scope: Scope, query: PageQuery): Promise<Page<Person>> {
  return await db.readSite(scope, (sql) => store.listPeople(sql, scope.siteId, query))
}

/** Lets a person in. Somebody who signs in at another site already is known by his e-mail and keeps name and password. */
export async function admitPerson(
  db: Database,
  scope: Scope,
  body: z.output<typeof admitPersonEndpoint.body>,
): Promise<Person> {
  const { password, ...person } = body
  const passwordHash = await hashPassword(password)
  return await db.withSite(scope, async (tx) => {
    // without the password: a receipt's hash is quick to make, and so to guess from
    if ((await receive(tx, admitPersonEndpoint.name, person.id, person)) === 'new') {
      await store.admitPerson(tx, { ...person, passwordHash })
    }
    return (await store.findPerson(tx, { email: person.email })) as Person
  })
}

export async function changeRole(db: Database, scope: Scope, personId: string, role: Role): Promise<Person> {
  return await db.withSite(scope, async (tx) => {
    const managers = await store.lockManagers(tx)
    const person = await store.findPerson(tx, { id: personId })
    if (!person) throw notFound('person')
    if (role !== 'manager' && managers.every((id) => id === personId)) {
      throw fieldError(
        'not-allowed-here',
        'role',
        `${person.name} is the only manager here: make somebody else a manager first, or nobody can let people in.`,
      )
    }
    await store.updateRole(tx, personId, role)
    return { ...person, role }
  })
}

export async function listAudit(
  db: Database,
  scope: Scope,
  query: store.AuditQuery,
): Promise<Page<z.output<typeof AuditEntry>>> {
  return await db.readSite(scope, (sql) => store.listAudit(sql, scope.siteId, query))
}

function checkTimeZone(timeZone: string): void {
  if (isTimeZone(timeZone)) return
  const message = `"${timeZone}" is not a time zone: write a name such as Europe/Berlin or America/Chicago.`
  throw fieldError('request-invalid', 'timeZone', message)
}
