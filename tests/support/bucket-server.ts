import { createHash, createHmac } from 'node:crypto'
import { once } from 'node:events'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'

/** A storage that speaks as much S3 as photos need, and takes only what is signed with its key (AWS Signature Version 4). */
export interface BucketServer {
  readonly endpoint: string
  readonly objects: Map<string, Buffer>
  /** What it answers instead: a status, or nothing at all. */
  fail?: number | 'silent' | undefined
  close(): Promise<void>
}

export const bucketKeys = { accessKeyId: 'key-of-the-book', secretAccessKey: 'secret-of-the-book', region: 'here-1' }

export async function openBucketServer(bucketName: string): Promise<BucketServer> {
  const objects = new Map<string, Buffer>()
  const server = createServer((request, reply) => void answer(request, reply))
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as AddressInfo
  const bucket: BucketServer = {
    endpoint: `http://127.0.0.1:${port}/${bucketName}`,
    objects,
    async close() {
      server.closeAllConnections()
      server.close()
      await once(server, 'close')
    },
  }

  async function answer(request: IncomingMessage, reply: ServerResponse): Promise<void> {
    const body = await bodyOf(request)
    if (bucket.fail === 'silent') return void request.socket.destroy()
    if (bucket.fail !== undefined) return void reply.writeHead(bucket.fail).end('<Error><Code>SlowDown</Code></Error>')
    const path = new URL(request.url ?? '/', bucket.endpoint).pathname
    const [, name, ...rest] = path.split('/')
    const key = rest.join('/')
    if (!isSigned(request, path))
      return void reply.writeHead(403).end('<Error><Code>SignatureDoesNotMatch</Code></Error>')
    if (name !== bucketName || key === '')
      return void reply.writeHead(404).end('<Error><Code>NoSuchBucket</Code></Error>')
    if (request.method === 'PUT') {
      objects.set(key, body)
      return void reply.writeHead(200, { etag: `"${createHash('md5').update(body).digest('hex')}"` }).end()
    }
    const found = objects.get(key)
    if (request.method !== 'GET' || !found)
      return void reply.writeHead(404).end('<Error><Code>NoSuchKey</Code></Error>')
    reply.writeHead(200, { 'content-length': found.length }).end(found)
  }
  return bucket
}

async function bodyOf(request: IncomingMessage): Promise<Buffer> {
  const parts: Buffer[] = []
  for await (const part of request) parts.push(part as Buffer)
  return Buffer.concat(parts)
}

/** Works out the signature as the storage does, and compares it. */
function isSigned(request: IncomingMessage, path: string): boolean {
  const said =
    /^AWS4-HMAC-SHA256 Credential=([^/]+)\/(\d{8})\/([^/]+)\/s3\/aws4_request, ?SignedHeaders=([^,]+), ?Signature=(\w{64})$/
  const found = said.exec(request.headers.authorization ?? '')
  if (!found) return false
  const [, accessKeyId, day, region, signedHeaders, signature] = found as unknown as string[]
  const hash = request.headers['x-amz-content-sha256']
  if (accessKeyId !== bucketKeys.accessKeyId || region !== bucketKeys.region) return false
  const names = (signedHeaders as string).split(';')
  const headers = names.map((name) => `${name}:${String(request.headers[name]).trim()}\n`).join('')
  const asked = [request.method, path, '', headers, signedHeaders, hash].join('\n')
  const scope = `${day}/${region}/s3/aws4_request`
  const hashed = createHash('sha256').update(asked).digest('hex')
  const text = ['AWS4-HMAC-SHA256', request.headers['x-amz-date'], scope, hashed].join('\n')
  const steps = [day, region, 's3', 'aws4_request', text] as string[]
  const start: Buffer = Buffer.from(`AWS4${bucketKeys.secretAccessKey}`)
  const made = steps.reduce((key, step) => createHmac('sha256', key).update(step).digest(), start)
  return made.toString('hex') === signature
}
