import type { FastifyBaseLogger } from 'fastify'
import { PgBoss } from 'pg-boss'
import type { Config } from '../config.ts'
import { openDatabase } from '../db/database.ts'
import { openMailer } from '../digests/mailer.ts'
import { sendDigests } from '../digests/send-digests.ts'
import { digestQueue, jobsSchema, turnOfDayQueue } from './queues.ts'
import { turnOfDay } from './turn-of-day.ts'

export interface Jobs {
  stop(): Promise<void>
}

/** Works off the jobs of all sites in this process. The day is also turned at start, for the nights it was switched off. */
export async function startJobs(config: Config, log: FastifyBaseLogger): Promise<Jobs> {
  const onError = (error: Error): void => log.error({ err: error }, 'a job failed')
  const db = openDatabase({ appUrl: config.appUrl, poolSize: 2, onError })
  const boss = new PgBoss({
    connectionString: config.appUrl,
    schema: jobsSchema,
    migrate: false,
    createSchema: false,
    max: 2,
    reindex: false,
    monitorVacuum: false,
  })
  boss.on('error', onError)
  await boss.start()
  await boss.send(turnOfDayQueue, {})
  await boss.work(turnOfDayQueue, { pollingIntervalSeconds: 30 }, async () => {
    const positions = await turnOfDay(db, new Date())
    log.info({ positions }, 'the day turned')
  })
  const mailer = config.mail && openMailer(config.mail)
  // without a mail server the calls of the clock are taken off the queue all the same
  await boss.work(digestQueue, { pollingIntervalSeconds: 30 }, async () => {
    const mails = mailer ? await sendDigests({ db, mailer, address: config.address }, new Date()) : 0
    log.info({ mails }, 'mails of what is due')
  })
  return {
    async stop() {
      await boss.stop({ graceful: true, timeout: 10_000, close: true })
      mailer?.close()
      await db.close()
    },
  }
}
