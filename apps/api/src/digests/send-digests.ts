import { plantDay } from '@shaftbook/contract/time-zone'
import type { Database, SiteTx } from '../db/database.ts'
import { findDueWork } from '../greasing-reports/due-work.store.ts'
import { digestMail, toldStates } from './digest-mail.ts'
import { dueDigests, holdDigest, markProblem, markSent } from './digests.store.ts'
import type { Mailer } from './mailer.ts'

export interface Sending {
  readonly db: Database
  readonly mailer: Mailer
  /** Where people reach the book; without it mails have no links. */
  readonly address: string | undefined
}

interface SiteFacts {
  id: string
  code: string
  name: string
  time_zone: string
}

/** A mail lists this many tasks at most and counts the rest. */
const mostListed = 100

/**
 * Sends each person's mail of what is due, once on each of the days that were chosen, from the chosen hour of the plant's
 * clock on. That it was sent is stored in the transaction that sends it: cut off in between, the mail is sent twice rather
 * than not at all. What fails is told to the person and tried again as long as the day lasts. Returns how many were sent.
 */
export async function sendDigests(sending: Sending, now: Date): Promise<number> {
  const sites = await sending.db.ask<{ id: string }>('select id from all_sites()')
  let sent = 0
  const failures: unknown[] = []
  for (const { id: siteId } of sites) {
    const scope = { siteId, personId: null }
    try {
      const { site, ids, today } = await sending.db.withSite(scope, (tx) => lookAt(tx, now))
      for (const id of ids) {
        try {
          sent += await sending.db.withSite(scope, (tx) => sendOne(sending, tx, { site, id, today }))
        } catch (error) {
          failures.push(error)
          const problem = `The mail of ${today} could not be sent: ${error instanceof Error ? error.message : String(error)}`
          await sending.db.withSite(scope, (tx) => markProblem(tx, id, problem.slice(0, 500)))
        }
      }
    } catch (error) {
      failures.push(error)
    }
  }
  if (failures.length > 0)
    throw new AggregateError(failures, `${failures.length} mail(s) of what is due were not sent.`)
  return sent
}

async function lookAt(tx: SiteTx, now: Date): Promise<{ site: SiteFacts; ids: string[]; today: string }> {
  const [site] = await tx.sql<SiteFacts>('select id, code, name, time_zone from site where id = $1::uuid', [
    tx.scope.siteId,
  ])
  if (!site) throw new Error(`site ${tx.scope.siteId} is not there`)
  const today = plantDay(now, site.time_zone)
  return { site, today, ids: await dueDigests(tx, { today, hour: hourOf(now, site.time_zone) }) }
}

async function sendOne(
  { mailer, address }: Sending,
  tx: SiteTx,
  { site, id, today }: { site: SiteFacts; id: string; today: string },
): Promise<number> {
  const held = await holdDigest(tx, id, today)
  if (!held) return 0
  const { work, inAll } = await findDueWork(tx.sql, {
    siteId: site.id,
    areaIds: held.areaIds,
    roundId: null,
    states: toldStates,
    until: '9999-12-31',
    limit: mostListed,
  })
  const wanted = inAll > 0 || held.alsoWhenNothing
  if (wanted) {
    const mail = digestMail({ siteName: site.name, siteCode: site.code, address, today, work, inAll })
    await mailer.send({ to: { name: held.name, address: held.email }, ...mail })
  }
  await markSent(tx, id, today)
  return wanted ? 1 : 0
}

/** The hour at the plant, 0 to 23. */
function hourOf(now: Date, timeZone: string): number {
  return Number(new Intl.DateTimeFormat('en', { timeZone, hour: 'numeric', hourCycle: 'h23' }).format(now))
}
