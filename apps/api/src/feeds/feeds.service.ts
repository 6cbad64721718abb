import { createHash, randomBytes } from 'node:crypto'
import { addDays } from '@shaftbook/bearing/plain-date'
import { mostEvents, type CalendarFeed, type createCalendarFeed } from '@shaftbook/contract/greasing-mail'
import { plantDay } from '@shaftbook/contract/time-zone'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { fieldError, notFound } from '../domain-error.ts'
import { findDueWork } from '../greasing-reports/due-work.store.ts'
import { doWork, type Worker } from '../meters/work.ts'
import { calendarText } from './calendar.ts'
import * as store from './feeds.store.ts'

/** More links than this are nobody's need. */
const mostFeeds = 50
/** How far ahead a calendar looks. */
const daysAhead = 366

/** Makes a link of the person who asks. Its secret is 32 random bytes; only their hash is kept. */
export function createFeed(
  context: Context,
  worker: Worker,
  body: z.output<typeof createCalendarFeed.body>,
): Promise<{ feed: CalendarFeed; secret: string }> {
  const secret = randomBytes(32).toString('base64url')
  return doWork(context, worker, async ({ tx, personId }) => {
    const row = { ...body, personId, secretHash: secretHash(secret) }
    if ((await receive(tx, 'create-calendar-feed', body.id, { ...body, personId })) === 'repeat') {
      if (!(await store.replaceSecret(tx, row))) throw notFound('calendar link')
    } else {
      if ((await store.countFeeds(tx, personId)) >= mostFeeds) {
        const message = `You have ${mostFeeds} calendar links here: end one that you no longer use.`
        throw fieldError('not-allowed-here', 'id', message)
      }
      if (body.roundId !== null && !(await store.hasRound(tx, body.roundId))) throw notFound('round', 'roundId')
      await store.addFeed(tx, row)
    }
    const feed = await store.findFeed(tx, body.id)
    if (!feed) throw notFound('calendar link')
    return { feed, secret }
  })
}

/** Ends a link of the person who asks. */
export function revokeFeed(context: Context, worker: Worker, id: string): Promise<void> {
  return doWork(context, worker, async ({ tx, personId }) => {
    if (!(await store.removeFeed(tx, id, personId))) throw notFound('calendar link')
  })
}

/** The calendar that a secret opens: what is due in the area or round of its link, at its site alone. */
export async function openFeed({ db, now }: Context, secret: string, address: string): Promise<string> {
  const feed = await store.feedOfSecret(db.ask, secretHash(secret))
  if (!feed) throw fieldError('not-found', 'secret', 'This calendar link was ended, or was never made: make a new one.')
  const today = plantDay(now(), feed.timeZone)
  return await db.readSite({ siteId: feed.siteId, personId: null }, async (sql) => {
    const { siteId, siteCode, siteName, areaId, roundId } = feed
    const subject = await store.subjectOf(sql, feed)
    const { work, inAll } = await findDueWork(sql, {
      siteId,
      areaIds: areaId === null ? [] : [areaId],
      roundId,
      states: null,
      until: addDays(today, daysAhead),
      limit: mostEvents,
    })
    const name = ['Greasing', siteName, subject].filter((part) => part !== null).join(', ')
    return calendarText({ name, siteCode, address, today, work, inAll })
  })
}

function secretHash(secret: string): Uint8Array<ArrayBuffer> {
  return new Uint8Array(createHash('sha256').update(secret).digest())
}
