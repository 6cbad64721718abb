import swagger from '@fastify/swagger'
import type { Access, Endpoint, MediaType } from '@shaftbook/contract/endpoint'
import type { FastifyInstance, FastifySchema } from 'fastify'
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod'
import { sessionCookie } from '../access/session.ts'

type Transform = typeof jsonSchemaTransform
type TransformObject = typeof jsonSchemaTransformObject

/** Collects the routes that are registered after it into one OpenAPI 3.1 document, which `app.swagger()` returns. */
export async function describeApi(app: FastifyInstance): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Shaftbook',
        version: '1',
        description:
          'The book of every shaft position: the bearing fitted there, how it was mounted, greased and why it ended.',
      },
      components: {
        securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: sessionCookie } },
      },
    },
    transform,
    transformObject,
  })
}

/** Adds what an endpoint says beside its schemas: who may call it, If-Match, replies without a body. */
const transform: Transform = (document) => {
  const { schema, url } = jsonSchemaTransform(document)
  const endpoint = 'route' in document ? document.route.config?.endpoint : undefined
  return { schema: endpoint ? { ...schema, ...saidBeside(endpoint, schema) } : schema, url }
}

function saidBeside(endpoint: Endpoint, schema: FastifySchema): Record<string, unknown> {
  return {
    description: callers(endpoint.access),
    security: endpoint.access === 'public' ? [] : [{ session: [] }],
    response: { ...bodiless(endpoint), ...fileReplies(endpoint), ...(schema.response as object) },
    ...(endpoint.takes && { body: { required: true, content: files(endpoint.takes) } }),
    ...(endpoint.ifMatch && { headers: ifMatchHeader }),
  }
}

const ifMatchHeader = {
  type: 'object',
  properties: { 'if-match': { type: 'string', description: 'The version that was read, in quotes, such as "3"' } },
  required: ['if-match'],
}

function callers(access: Access): string {
  if (access === 'public') return 'For anyone.'
  return access === 'signed-in' ? 'For anyone who is signed in.' : `For the roles ${access.join(', ')} of the site.`
}

function bodiless(endpoint: Endpoint): Record<string, unknown> {
  const statuses = Object.entries(endpoint.replies).flatMap(([status, body]) => (body === null ? [status] : []))
  return Object.fromEntries(statuses.map((status) => [status, { type: 'null', description: 'Done' }]))
}

function fileReplies({ gives, replies }: Endpoint): Record<string, unknown> {
  if (gives === undefined) return {}
  const file = { description: 'The file', content: files(gives) }
  const known = { type: 'null', description: 'The file that If-None-Match names is still the one' }
  return { ...Object.fromEntries(Object.keys(replies).map((status) => [status, file])), 304: known }
}

function files(types: readonly MediaType[]): Record<string, unknown> {
  return Object.fromEntries(types.map((type) => [type, { schema: { type: 'string', format: 'binary' } }]))
}

/**
 * Leaves out the twins that every named schema gets for requests and replies where nothing refers to them, and puts the
 * rest in the order of their names: the library lists them in the order in which their files were imported.
 */
const transformObject: TransformObject = (document) => {
  const whole = jsonSchemaTransformObject(document) as { components?: { schemas?: Record<string, unknown> } }
  const schemas = whole.components?.schemas ?? {}
  for (let unused = unreferenced(whole, schemas); unused.length > 0; unused = unreferenced(whole, schemas)) {
    for (const name of unused) delete schemas[name]
  }
  if (whole.components) whole.components.schemas = byName(schemas)
  return JSON.parse(JSON.stringify(whole, withoutNoise)) as ReturnType<TransformObject>
}

function byName(schemas: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(schemas).toSorted(([one], [other]) => (one < other ? -1 : 1)))
}

/** A format says it better than its long pattern, `integer` better than the largest whole number of the machine. */
function withoutNoise(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value
  const { pattern, minimum, maximum, ...rest } = value as Record<string, unknown>
  return {
    ...rest,
    ...(pattern !== undefined && rest['format'] === undefined && { pattern }),
    ...(minimum !== undefined && minimum !== Number.MIN_SAFE_INTEGER && { minimum }),
    ...(maximum !== undefined && maximum !== Number.MAX_SAFE_INTEGER && { maximum }),
  }
}

function unreferenced(whole: object, schemas: Record<string, unknown>): string[] {
  const text = JSON.stringify(whole)
  return Object.keys(schemas).filter((name) => !text.includes(`"#/components/schemas/${name}"`))
}
