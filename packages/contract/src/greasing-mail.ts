import { z } from 'zod'
import { Day, Id, Instant, page, pageQuery, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

/** A calendar holds this many events at most, the longest due first. */
export const mostEvents = 500

export const CalendarFeed = z
  .object({
    id: Id,
    areaId: Id.nullable(),
    areaName: z.string().nullable(),
    roundId: Id.nullable(),
    roundName: z.string().nullable(),
    createdAt: Instant,
  })
  .meta({ id: 'CalendarFeed' })
export type CalendarFeed = z.infer<typeof CalendarFeed>

export const listCalendarFeeds = endpoint({
  name: 'list-calendar-feeds',
  method: 'GET',
  path: sitePath('calendar-feeds'),
  access: everyone,
  summary: 'Your own calendar links at the site, without their secrets',
  params: siteParams,
  query: z.object(pageQuery),
  replies: { 200: page(CalendarFeed) },
})
export const createCalendarFeed = endpoint({
  name: 'create-calendar-feed',
  method: 'POST',
  path: sitePath('calendar-feeds'),
  access: everyone,
  summary: 'Make a calendar link; its secret is in this reply only. The same request again makes a new secret for it',
  params: siteParams,
  body: z
    .strictObject({ id: Id, areaId: Id.nullable().default(null), roundId: Id.nullable().default(null) })
    .refine(({ areaId, roundId }) => areaId === null || roundId === null, {
      path: ['roundId'],
      message: 'A link is for an area or for a round, not for both',
    }),
  replies: {
    201: z.object({
      feed: CalendarFeed,
      address: z.string().meta({ description: 'What a calendar program is given; shown once' }),
    }),
  },
})
export const revokeCalendarFeed = endpoint({
  name: 'revoke-calendar-feed',
  method: 'DELETE',
  path: sitePath('calendar-feeds/:id'),
  access: everyone,
  summary: 'End one of your calendar links; it is not found from then on',
  params: recordParams,
  replies: { 204: null },
})
export const readCalendarFeed = endpoint({
  name: 'read-calendar-feed',
  method: 'GET',
  path: '/api/v1/feeds/:secret.ics',
  access: 'public',
  summary: `What is due as iCalendar (RFC 5545), for whoever has the secret of the link; ${mostEvents} events at most`,
  params: z.object({ secret: z.string().max(100) }),
  gives: ['text/calendar'],
  replies: { 200: null },
})

const Weekday = z.int().min(1).max(7).meta({ description: '1 is Monday' })
const digestShape = {
  weekdays: z.array(Weekday).max(7).meta({ description: 'Days on which a mail comes; none: no mail' }),
  hour: z.int().min(0).max(23).meta({ description: 'From this hour on, by the clock of the plant' }),
  areaIds: z.array(Id).max(100).meta({ description: 'None: the whole site' }),
  alsoWhenNothing: z.boolean().meta({ description: 'true: a mail comes when nothing is due, too' }),
}
export const MailDigest = z
  .object({
    ...digestShape,
    to: z.string(),
    lastSentOn: Day.nullable(),
    problem: z.string().nullable().meta({ description: 'What came of the last try where it failed' }),
    mailReady: z.boolean().meta({ description: 'false: the operator has given no mail server' }),
  })
  .meta({ id: 'MailDigest' })
export type MailDigest = z.infer<typeof MailDigest>

export const readMailDigest = endpoint({
  name: 'read-mail-digest',
  method: 'GET',
  path: sitePath('mail-digest'),
  access: everyone,
  summary: 'When you get a mail of what is due at the site, and about which areas',
  params: siteParams,
  replies: { 200: MailDigest },
})
export const changeMailDigest = endpoint({
  name: 'change-mail-digest',
  method: 'PATCH',
  path: sitePath('mail-digest'),
  access: everyone,
  summary: 'Say when you get a mail of what is due at the site, and about which areas',
  params: siteParams,
  body: z.strictObject(digestShape),
  replies: { 200: MailDigest },
})
