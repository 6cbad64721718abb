import cookie from '@fastify/cookie'
import helmet from '@fastify/helmet'
import rateLimit from '@fastify/rate-limit'
import Fastify, { type FastifyInstance } from 'fastify'
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { accessRoutes, signInRoutes } from './access/access.routes.ts'
import { calculationRoutes } from './calculations/calculations.routes.ts'
import type { Config } from './config.ts'
import type { Context } from './context.ts'
import { openDatabase } from './db/database.ts'
import { digestRoutes } from './digests/digests.routes.ts'
import { feedRoutes, openFeedRoutes } from './feeds/feeds.routes.ts'
import { flagRoutes } from './flags/flags.routes.ts'
import { greaseChangeRoutes } from './grease-changes/grease-changes.routes.ts'
import { greasingRoutes } from './greasing/greasing.routes.ts'
import { greasingReportRoutes } from './greasing-reports/greasing-reports.routes.ts'
import { serveDashboard } from './http/dashboard.ts'
import { fieldSentence } from './http/field-sentences.ts'
import { guardCaches, guardOrigin, guardSignedIn } from './http/guard.ts'
import { healthRoutes } from './http/health.ts'
import { describeApi } from './http/openapi.ts'
import { answerBadAddress, answerProblems } from './http/problems.ts'
import { lifeRoutes } from './life/life.routes.ts'
import { mountPlanRoutes } from './mount-plans/mount-plans.routes.ts'
import { mountRoutes } from './mounts/mounts.routes.ts'
import { photoRoutes } from './photos/photos.routes.ts'
import { observationRoutes } from './observations/observations.routes.ts'
import { papersRoutes } from './papers/papers.routes.ts'
import { positionRoutes } from './positions/positions.routes.ts'
import { registerRoutes } from './register/register.routes.ts'
import { removalRoutes } from './removals/removals.routes.ts'
import { roundRoutes } from './rounds/rounds.routes.ts'
import { storesRoutes } from './stores/stores.routes.ts'
import { meterRoutes } from './meters/meters.routes.ts'

/** The whole service as a function: no port is opened. The database is closed with the app. */
export async function buildApp(config: Config, now: () => Date = () => new Date()): Promise<FastifyInstance> {
  const app = Fastify({
    logger: config.log === 'silent' ? false : { level: config.log },
    // one proxy: what it was told by others about the caller's address is not believed
    trustProxy: config.trustProxy && ((_address, hop) => hop === 0),
    bodyLimit: 1_048_576,
    requestTimeout: 30_000,
    allowErrorHandlerOverride: false,
    routerOptions: { maxParamLength: 200 },
    frameworkErrors: answerBadAddress,
  })
  app.removeContentTypeParser('text/plain')
  z.config({ localeError: fieldSentence })
  app.setValidatorCompiler(validatorCompiler)
  app.setSerializerCompiler(serializerCompiler)
  answerProblems(app)
  app.decorateRequest('signedIn', null)

  const db = openDatabase({
    appUrl: config.appUrl,
    poolSize: config.poolSize,
    onError: (error) => app.log.error({ err: error }, 'an idle database connection broke'),
  })
  app.addHook('onClose', () => db.close())
  const context: Context = { config, db, now }

  await app.register(helmet, { contentSecurityPolicy: { directives: contentSecurity } })
  await app.register(cookie)
  await app.register(rateLimit, { global: false })
  await describeApi(app)
  guardCaches(app)
  guardOrigin(app)

  await app.register(async (open) => {
    healthRoutes(open, context)
    signInRoutes(open, context)
    openFeedRoutes(open, context)
    open.get('/api/v1/openapi.json', { schema: { hide: true } }, () => app.swagger())
  })
  await app.register(async (signedIn) => {
    guardSignedIn(signedIn, context)
    for (const routes of featureRoutes) routes(signedIn, context)
  })
  if (config.webDir !== undefined) await serveDashboard(app, config.webDir)
  return app
}

const featureRoutes = [
  accessRoutes,
  registerRoutes,
  positionRoutes,
  papersRoutes,
  mountRoutes,
  mountPlanRoutes,
  removalRoutes,
  lifeRoutes,
  greasingRoutes,
  greaseChangeRoutes,
  observationRoutes,
  greasingReportRoutes,
  feedRoutes,
  digestRoutes,
  roundRoutes,
  meterRoutes,
  storesRoutes,
  flagRoutes,
  photoRoutes,
  calculationRoutes,
]

const contentSecurity = {
  defaultSrc: ["'self'"],
  // the code reader of the camera is WebAssembly of our own
  scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
  styleSrc: ["'self'", "'unsafe-inline'"],
  imgSrc: ["'self'", 'data:', 'blob:'],
  fontSrc: ["'self'", 'data:'],
  connectSrc: ["'self'"],
  workerSrc: ["'self'"],
  manifestSrc: ["'self'"],
  objectSrc: ["'none'"],
  frameAncestors: ["'none'"],
  upgradeInsecureRequests: null,
}
