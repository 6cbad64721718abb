import type { MediaType } from '@shaftbook/contract/endpoint'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { DomainError } from '../domain-error.ts'

/** A file as the reply of an endpoint that `gives` one. */
export class FileReply {
  readonly bytes: Buffer
  readonly mediaType: MediaType
  /** What the file is called when it is kept, with its ending. */
  readonly fileName: string
  /** Stands for these bytes: a caller who has them already is answered with 304. */
  readonly tag: string
  /** inline: shown by the browser. attachment: kept as a file. */
  readonly disposition: 'inline' | 'attachment'

  constructor(file: Pick<FileReply, 'bytes' | 'mediaType' | 'fileName' | 'tag' | 'disposition'>) {
    this.bytes = file.bytes
    this.mediaType = file.mediaType
    this.fileName = file.fileName
    this.tag = file.tag
    this.disposition = file.disposition
  }
}

export function isFile(result: unknown): result is FileReply {
  return result instanceof FileReply
}

/** In this scope bodies are files of these media types and nothing else. */
export function takeFiles(app: FastifyInstance, types: readonly MediaType[]): void {
  app.removeAllContentTypeParsers()
  app.addContentTypeParser([...types], { parseAs: 'buffer' }, (_request, body, done) => done(null, body))
  app.addHook('preValidation', async ({ body }) => {
    if (!Buffer.isBuffer(body) || body.length === 0)
      throw new DomainError('request-invalid', 'The request has no file in it: send the file as its body.')
  })
}

/**
 * Sends a file, or 304 where the caller has it. It is kept by the caller's own browser only, which asks before each use; a
 * picture that is opened as a page can do nothing.
 */
export function sendFile(request: FastifyRequest, reply: FastifyReply, file: FileReply): FastifyReply {
  const tag = `"${file.tag}"`
  reply.headers({ etag: tag, 'cache-control': 'private, no-cache' })
  if (knows(request.headers['if-none-match'], tag)) return reply.code(304).send()
  reply.headers({
    'content-disposition': `${file.disposition}; ${nameParameters(file.fileName)}`,
    'x-content-type-options': 'nosniff',
    ...(file.mediaType.startsWith('image/') && { 'content-security-policy': "default-src 'none'; sandbox" }),
  })
  const charset = file.mediaType.startsWith('text/') ? '; charset=utf-8' : ''
  return reply.type(`${file.mediaType}${charset}`).send(file.bytes)
}

function knows(ifNoneMatch: string | undefined, tag: string): boolean {
  const tags = ifNoneMatch?.split(',').map((one) => one.trim().replace(/^W\//, '')) ?? []
  return tags.includes(tag) || tags.includes('*')
}

/** The name in letters that every browser reads and, for those that read RFC 8187, as it is. */
function nameParameters(fileName: string): string {
  const plain = fileName.replaceAll(/[^\w .-]/g, '_')
  const whole = encodeURIComponent(fileName).replaceAll(/['()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16)}`)
  return `filename="${plain}"; filename*=UTF-8''${whole}`
}
