import { randomBytes } from 'node:crypto'
import { parseArgs } from 'node:util'
import { Email } from '@shaftbook/contract/access'
import { Name } from '@shaftbook/contract/common'
import { isTimeZone } from '@shaftbook/contract/time-zone'
import { v7 as newId } from 'uuid'
import { z } from 'zod'
import { hashPassword } from '../../api/src/access/passwords.ts'
import { withClient } from './database-client.ts'
import { OperatorError } from './operator-error.ts'

export const openSiteUsage =
  'npm run open-site -- --code north-mill --name "North Mill" --time-zone Europe/Berlin --manager "Given Family" --email name@example.org'

const NewSite = z.object({
  code: z
    .string()
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'has small letters, digits and single dashes only, such as north-mill')
    .max(60)
    .refine(
      (code) => !['api', 'assets', 'gallery', 'sign-in'].includes(code),
      'is an address that the service needs itself',
    ),
  name: Name,
  'time-zone': z.string().refine(isTimeZone, 'is not a time zone such as Europe/Berlin'),
  manager: Name,
  email: Email,
})
export type NewSite = z.infer<typeof NewSite>

/** The options of the command. @throws OperatorError that lists every one that is missing or wrong */
export function readNewSite(options: string[]): NewSite {
  const text = { type: 'string' } as const
  const known = { code: text, name: text, 'time-zone': text, manager: text, email: text }
  const { values } = parseArgs({ args: options, options: known, strict: false })
  const result = NewSite.safeParse(values)
  if (result.success) return result.data
  const problems = result.error.issues.map((issue) => `--${issue.path.join('.')} ${issue.message}.`)
  throw new OperatorError(`${problems.join('\n')}\nLike this: ${openSiteUsage}`)
}

/**
 * Opens a site with its first manager, who lets the others in from the dashboard. Somebody who has an account keeps it.
 * @returns the password that was made for a new account, or undefined for one that was there
 */
export async function openSite(ownerUrl: string, site: NewSite): Promise<string | undefined> {
  const password = randomBytes(12).toString('base64url')
  const passwordHash = await hashPassword(password)
  return await withClient(ownerUrl, async (client) => {
    await client.query('begin')
    const siteId = newId()
    await client.query("select set_config('app.site', $1, true)", [siteId])
    const { rowCount: opened } = await client.query(
      'insert into site (id, code, name, time_zone) values ($1, $2, $3, $4) on conflict (code) do nothing',
      [siteId, site.code, site.name, site['time-zone']],
    )
    if (opened === 0) throw new OperatorError(`There is a site "${site.code}" already: choose another --code.`)
    const { rowCount: isNew } = await client.query(
      'insert into person (id, email, name, password_hash) values ($1, $2, $3, $4) on conflict (email) do nothing',
      [newId(), site.email, site.manager, passwordHash],
    )
    await client.query(
      "insert into membership (person_id, site_id, role) select id, $1, 'manager' from person where email = $2",
      [siteId, site.email],
    )
    await client.query('commit')
    return isNew === 0 ? undefined : password
  })
}
