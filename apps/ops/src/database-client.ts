import { Client } from 'pg'
import { OperatorError } from './operator-error.ts'

/**
 * Does a piece of work on one connection and closes it.
 * @throws OperatorError when the database can't be reached
 */
export async function withClient<T>(url: string, work: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: url, connectionTimeoutMillis: 10_000 })
  // a connection lost between queries makes the next query fail, which says it; unheard, it would end the process
  client.on('error', () => {})
  try {
    await client.connect()
  } catch (error) {
    throw new OperatorError(connectionProblem(error as NodeJS.ErrnoException, url), { cause: error })
  }
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

/** What a failed connection means to the operator. The sentence names the server, the role and never the password. */
export function connectionProblem(error: NodeJS.ErrnoException, url: string): string {
  const { hostname, port, username, pathname } = new URL(url)
  const server = `${hostname || 'this machine'}:${port || 5432}`
  const database = decodeURIComponent(pathname.slice(1)) || decodeURIComponent(username)
  switch (error.code) {
    case 'ECONNREFUSED':
      return `No PostgreSQL answers at ${server}: start it, or mend the address in DATABASE_URL.`
    case 'ENOTFOUND':
    case 'EAI_AGAIN':
      return `There is no machine named ${hostname} on this network: mend the address in DATABASE_URL.`
    case '28P01':
    case '28000':
      return `PostgreSQL at ${server} does not let ${decodeURIComponent(username)} in: mend the name or the password in DATABASE_URL.`
    case '3D000':
      return `PostgreSQL at ${server} has no database named ${database}: create it, or mend the name in DATABASE_URL.`
    default:
      return `PostgreSQL at ${server} can't be reached (${error.message}): look at the server and at DATABASE_URL.`
  }
}
