import { problemCodes, type FieldFault, type Problem, type ProblemCode } from '@shaftbook/contract/problem'
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { DomainError } from '../domain-error.ts'

export const problemType = 'application/problem+json'

/** Answers every error as RFC 9457 problem details, at the root so that no scope can miss it. */
export function answerProblems(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError | DomainError, request, reply) => {
    const problem =
      error instanceof DomainError ? problemOf(error.code, error.message, error.fields) : fromFastify(error, request)
    if (problem.status >= 500) request.log.error({ err: error }, 'request failed')
    return send(reply, problem)
  })
  app.setNotFoundHandler((request, reply) =>
    send(reply, problemOf('not-found', `There is nothing at ${request.method} ${request.url.split('?')[0]}.`)),
  )
}

/** Answers what Fastify refuses before there is a route: an address with an escape that is none. */
export function answerBadAddress(_error: FastifyError, _request: FastifyRequest, reply: FastifyReply): void {
  send(reply, problemOf('request-invalid', 'The address of the request cannot be read.'))
}

export function problemOf(code: ProblemCode, detail: string, fields: FieldFault[] = []): Problem {
  const [status, title] = problemCodes[code]
  return { type: `urn:shaftbook:problem:${code}`, title, status, code, detail, ...(fields.length > 0 && { fields }) }
}

function send(reply: FastifyReply, problem: Problem): FastifyReply {
  return reply.code(problem.status).type(problemType).serializer(JSON.stringify).send(problem)
}

interface ValidationIssue {
  readonly instancePath: string
  readonly message?: string
}

function fromFastify(error: FastifyError, { routeOptions }: FastifyRequest): Problem {
  if (error.validation) return fromValidation(error)
  switch (error.code) {
    case 'FST_ERR_CTP_BODY_TOO_LARGE': {
      const megabytes = Math.floor((routeOptions.bodyLimit ?? 1_000_000) / 1_000_000)
      return problemOf('body-too-large', `The request is larger than ${megabytes} MB: send less at a time.`)
    }
    case 'FST_ERR_CTP_INVALID_MEDIA_TYPE': {
      const types = routeOptions.config.endpoint?.takes ?? ['application/json']
      return problemOf('media-type-not-supported', `Send the request as ${types.join(', ')}.`)
    }
    case 'FST_ERR_CTP_EMPTY_JSON_BODY':
    case 'FST_ERR_CTP_INVALID_JSON_BODY':
    case 'FST_ERR_CTP_INVALID_CONTENT_LENGTH':
      return problemOf('request-invalid', 'The body of the request is not readable as JSON.')
  }
  if (error.statusCode === 429) return problemOf('too-many-requests', error.message)
  if (error.statusCode === 503) return problemOf('not-ready', 'The service is busy: try again in a moment.')
  if (error.statusCode !== undefined && error.statusCode >= 400 && error.statusCode < 500) {
    return problemOf('request-invalid', 'The request is not readable.')
  }
  return problemOf(
    'internal-error',
    'Something went wrong in the service. Nothing was saved; try again, and tell the engineer if it stays.',
  )
}

function fromValidation(error: FastifyError): Problem {
  const issues = (error.validation ?? []) as readonly ValidationIssue[]
  const fields = issues.slice(0, 50).map((issue) => ({
    path: issue.instancePath.replace(/^\//, '').replaceAll('/', '.') || (error.validationContext ?? 'body'),
    message: issue.message ?? 'is not right',
  }))
  const [first] = fields
  const rest = fields.length > 1 ? ` (and ${fields.length - 1} more)` : ''
  return problemOf(
    'request-invalid',
    `Look again at ${first?.path ?? 'the request'}: ${first?.message}${rest}.`,
    fields,
  )
}
