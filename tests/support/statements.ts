import { Client } from 'pg'
import { vi } from 'vitest'

/** Counts the statements that are sent to the database while the work is done; commands of the transaction itself too. */
export async function countStatements(work: () => PromiseLike<unknown>): Promise<number> {
  const query = vi.spyOn(Client.prototype, 'query')
  try {
    await work()
    return query.mock.calls.length
  } finally {
    query.mockRestore()
  }
}
