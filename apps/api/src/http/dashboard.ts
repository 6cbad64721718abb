import fastifyStatic from '@fastify/static'
import type { FastifyInstance } from 'fastify'
import { problemOf, problemType } from './problems.ts'

/** What helmet says of documents, which means nothing for scripts, styles and fonts. */
const documentHeaders = [
  'content-security-policy',
  'cross-origin-opener-policy',
  'origin-agent-cluster',
  'referrer-policy',
  'strict-transport-security',
  'x-dns-prefetch-control',
  'x-download-options',
  'x-frame-options',
  'x-permitted-cross-domain-policies',
  'x-xss-protection',
]

/** Serves the built dashboard: hashed assets for ever, the page itself always fresh, every other address gets the page. */
export async function serveDashboard(app: FastifyInstance, webDir: string): Promise<void> {
  await app.register(async (pages) => {
    await pages.register(fastifyStatic, {
      root: webDir,
      wildcard: false,
      cacheControl: false,
      // the build lays them beside the files; they are no addresses of their own
      preCompressed: true,
      globIgnore: ['**/*.br', '**/*.gz'],
      setHeaders: (reply, path) => {
        const hashed = path.includes('/assets/')
        // on a slow line they weigh as much as the small files themselves
        if (hashed) for (const name of documentHeaders) void reply.removeHeader(name)
        void reply.header('cache-control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache')
      },
    })
    pages.get('/*', { schema: { hide: true } }, (request, reply) => {
      if (request.url.startsWith('/api/') || request.url.startsWith('/assets/')) {
        const problem = problemOf('not-found', `There is nothing at ${request.url.split('?')[0]}.`)
        return reply.code(404).type(problemType).send(JSON.stringify(problem))
      }
      return reply.header('cache-control', 'no-cache').sendFile('index.html')
    })
  })
}
