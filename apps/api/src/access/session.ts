import { createHash, randomBytes } from 'node:crypto'
import type { Role } from '@shaftbook/contract/roles'
import { v7 as uuidv7 } from 'uuid'
import type { Database } from '../db/database.ts'

export const sessionCookie = 'shaftbook_session'
export const sessionDays = 30

export interface SiteMembership {
  readonly siteId: string
  readonly siteCode: string
  readonly siteName: string
  readonly timeZone: string
  readonly role: Role
}

/** The person behind a request. */
export interface SignedIn {
  readonly id: string
  readonly name: string
  readonly email: string
  readonly memberships: readonly SiteMembership[]
}

interface MembershipRow {
  person_id: string
  email: string
  name: string
  site_id: string | null
  site_code: string
  site_name: string
  time_zone: string
  role: Role
}

/** Opens a session and returns its token, which only the cookie holds: the database keeps a hash. */
export async function openSession(db: Database, personId: string, now: Date): Promise<string> {
  const token = randomBytes(32).toString('base64url')
  const until = new Date(now.getTime() + sessionDays * 86_400_000)
  await db.ask('select open_session($1, $2, $3, $4)', [uuidv7(), tokenHash(token), personId, until])
  return token
}

/** The person of a session with the sites and roles, or undefined when it is over. One statement. */
export async function findSession(db: Database, token: string): Promise<SignedIn | undefined> {
  const rows = await db.ask<MembershipRow>('select * from session_memberships($1)', [tokenHash(token)])
  const [first] = rows
  if (!first) return undefined
  const memberships = rows.flatMap((row) =>
    row.site_id === null
      ? []
      : [
          {
            siteId: row.site_id,
            siteCode: row.site_code,
            siteName: row.site_name,
            timeZone: row.time_zone,
            role: row.role,
          },
        ],
  )
  return { id: first.person_id, name: first.name, email: first.email, memberships }
}

export async function closeSession(db: Database, token: string): Promise<void> {
  await db.ask('select close_session($1)', [tokenHash(token)])
}

/** The key of the session's person for sealing on a device, or undefined when the session is over. */
export async function findDeviceKey(db: Database, token: string): Promise<Buffer | undefined> {
  const [found] = await db.ask<{ device_key: Buffer }>('select device_key from session_device_key($1)', [
    tokenHash(token),
  ])
  return found?.device_key
}

function tokenHash(token: string): Buffer {
  return createHash('sha256').update(token).digest()
}
