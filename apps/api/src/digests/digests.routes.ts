import { changeMailDigest, readMailDigest } from '@shaftbook/contract/greasing-mail'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import { changeDigest, readDigest } from './digests.service.ts'

export function digestRoutes(app: FastifyInstance, context: Context): void {
  route(app, readMailDigest, ({ scope, signedIn }) => readDigest(context, scope, signedIn))
  route(app, changeMailDigest, ({ scope, signedIn, body }) => changeDigest(context, scope, signedIn, body))
}
