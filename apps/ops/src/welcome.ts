import { demoSignIns } from '../../../seeds/load-demo.ts'
import { withClient } from './database-client.ts'
import { openSiteUsage } from './open-site.ts'

const loopback = /^(127\.|localhost$|::1$)/

/** What the operator reads once the book is open: the address, and the demo's sign-ins where they exist. */
export async function welcome(url: string, host: string, ownerUrl: string): Promise<string> {
  const lines = [`\nShaftbook is open at ${url}`]
  const known = await knownEmails(ownerUrl)
  const signIns = demoSignIns.filter(({ email }) => known.has(email))
  if (signIns.length > 0) {
    const width = Math.max(...signIns.map(({ role }) => role.length))
    lines.push('Sign in to the demo as')
    for (const { role, email, password } of signIns) lines.push(`  ${role.padEnd(width)}  ${email}  ${password}`)
    if (!loopback.test(host))
      lines.push('They are the same in every Shaftbook: whoever reaches this address can use them.')
  }
  if (await isEmpty(ownerUrl)) lines.push(`The book has no site yet. Stop it and open one:\n  ${openSiteUsage}`)
  lines.push('Ctrl-C stops it.')
  return lines.join('\n')
}

async function isEmpty(ownerUrl: string): Promise<boolean> {
  const { rowCount } = await withClient(ownerUrl, (client) => client.query('select from site limit 1'))
  return rowCount === 0
}

async function knownEmails(ownerUrl: string): Promise<Set<string>> {
  const emails = demoSignIns.map(({ email }) => email)
  const found = await withClient(ownerUrl, (client) =>
    client.query<{ email: string }>('select email from person where email = any($1)', [emails]),
  )
  return new Set(found.rows.map(({ email }) => email))
}
