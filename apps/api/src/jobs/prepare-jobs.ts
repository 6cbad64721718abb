import { Client } from 'pg'
import { PgBoss } from 'pg-boss'
import { digestQueue, jobsSchema, turnOfDayQueue } from './queues.ts'

/**
 * Makes the job tables in their own schema, as the owner, and lets the serving role use them. Part of migrating: the service
 * itself may not create anything. Running it again changes nothing.
 */
export async function prepareJobs(ownerUrl: string): Promise<void> {
  const boss = new PgBoss({ connectionString: ownerUrl, schema: jobsSchema, supervise: false, schedule: false })
  const errors: Error[] = []
  boss.on('error', (error: Error) => errors.push(error))
  await boss.start()
  await boss.createQueue(turnOfDayQueue, { retryLimit: 3, retryDelay: 60, expireInSeconds: 3600, policy: 'singleton' })
  // midnight comes to every time zone in its own hour, and changed settings do not wait for it
  await boss.schedule(turnOfDayQueue, '*/10 * * * *', {}, { tz: 'UTC' })
  await boss.createQueue(digestQueue, { retryLimit: 0, expireInSeconds: 3600, policy: 'singleton' })
  await boss.schedule(digestQueue, '*/10 * * * *', {}, { tz: 'UTC' })
  await boss.stop({ graceful: true, close: true })
  if (errors[0]) throw new Error('The job tables could not be made.', { cause: errors[0] })
  const client = new Client({ connectionString: ownerUrl })
  await client.connect()
  try {
    await client.query(`
      grant usage on schema ${jobsSchema} to shaftbook_app;
      grant select, insert, update, delete on all tables in schema ${jobsSchema} to shaftbook_app;
      grant usage on all sequences in schema ${jobsSchema} to shaftbook_app;
      grant execute on all functions in schema ${jobsSchema} to shaftbook_app`)
  } finally {
    await client.end()
  }
}
