import { createHash } from 'node:crypto'
import * as contract from '@shaftbook/contract/greasing-mail'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { Context } from '../context.ts'
import { FileReply } from '../http/files.ts'
import { route } from '../http/route.ts'
import { createFeed, openFeed, revokeFeed } from './feeds.service.ts'
import { listFeeds } from './feeds.store.ts'

export function feedRoutes(app: FastifyInstance, context: Context): void {
  route(app, contract.listCalendarFeeds, ({ scope, signedIn, query }) =>
    context.db.readSite(scope, (sql) => listFeeds(sql, scope.siteId, signedIn.id, query)),
  )
  route(app, contract.createCalendarFeed, async (call) => {
    const { feed, secret } = await createFeed(context, call, call.body)
    return { feed, address: `${addressOf(context, call.request)}/api/v1/feeds/${secret}.ics` }
  })
  route(app, contract.revokeCalendarFeed, async (call) => {
    await revokeFeed(context, call, call.params.id)
    return undefined
  })
}

/** Whoever has the secret reads the calendar, so the log does not name it. */
export function openFeedRoutes(app: FastifyInstance, context: Context): void {
  app.register(
    async (feeds) => {
      route(feeds, contract.readCalendarFeed, async ({ params, request }) => {
        const bytes = Buffer.from(await openFeed(context, params.secret, addressOf(context, request)))
        const tag = createHash('sha256').update(bytes).digest('base64url')
        return new FileReply({
          bytes,
          mediaType: 'text/calendar',
          fileName: 'greasing.ics',
          tag,
          disposition: 'inline',
        })
      })
    },
    { logSerializers: { req: () => 'GET /api/v1/feeds/' } },
  )
}

function addressOf({ config }: Context, request: FastifyRequest): string {
  return config.address ?? `${request.protocol}://${request.host}`
}
