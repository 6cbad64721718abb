import type { ClientBase } from 'pg'

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

/** Chooses the site for what follows in the transaction that is open: forced row-level security binds the owner too. */
export async function chooseSite(client: ClientBase, siteId: string): Promise<void> {
  if (!uuid.test(siteId)) throw new Error(`"${siteId}" is not the id of a site.`)
  await client.query(`set local app.site = '${siteId}'`)
}

/** Runs the work in one transaction of one site; all of it stands, or nothing. */
export async function inSite<T>(client: ClientBase, siteId: string, work: () => Promise<T>): Promise<T> {
  await client.query('begin')
  try {
    await chooseSite(client, siteId)
    const result = await work()
    await client.query('commit')
    return result
  } catch (error) {
    await client.query('rollback')
    throw error
  }
}
