import { once } from 'node:events'
import { createServer, type RequestListener } from 'node:http'
import type { AddressInfo } from 'node:net'
import { describe, expect, it, onTestFinished } from 'vitest'
import { useTestDatabase } from '../support/database.ts'
import { ServiceProcess } from '../support/service-process.ts'
import { Wire } from '../support/wire.ts'

/** A wire to a small service of the test's own. */
async function wireTo(listener: RequestListener): Promise<Wire> {
  const server = createServer(listener).listen(0, '127.0.0.1')
  await once(server, 'listening')
  const wire = new Wire(`http://127.0.0.1:${(server.address() as AddressInfo).port}`)
  await wire.open()
  onTestFinished(async () => {
    await wire.close()
    server.closeAllConnections()
    server.close()
  })
  return wire
}

/** Why a request failed, in the system's word, such as ECONNREFUSED. */
async function failure(request: Promise<Response>): Promise<string> {
  const error = await request.then(
    () => expect.fail('an answer came'),
    (error: Error) => error.cause as NodeJS.ErrnoException,
  )
  return error.code ?? error.message
}

/** Counts the writes that it was asked for. */
function counting(): { listener: RequestListener; written: string[] } {
  const written: string[] = []
  return {
    written,
    listener: (question, answer) => {
      let body = ''
      question.on('data', (chunk: Buffer) => (body += chunk.toString()))
      question.on('end', () => {
        if (question.method === 'POST') written.push(body)
        answer.writeHead(201).end(`${written.length}`)
      })
    },
  }
}

describe('a whole wire', () => {
  it('passes method, address, host, body, status and every header', async () => {
    const wire = await wireTo((question, answer) => {
      answer.setHeader('set-cookie', ['a=1', 'b=2'])
      answer.writeHead(409, { 'x-asked': `${question.method} ${question.url} ${question.headers.host}` })
      question.pipe(answer)
    })
    const answer = await fetch(`${wire.url}/some/where?q=1`, { method: 'POST', body: 'typed' })
    expect(answer.status).toBe(409)
    expect(answer.headers.get('x-asked')).toBe(`POST /some/where?q=1 ${new URL(wire.url).host}`)
    expect(answer.headers.getSetCookie()).toEqual(['a=1', 'b=2'])
    expect(await answer.text()).toBe('typed')
    expect(wire.asked).toEqual(['POST /some/where?q=1'])
  })
})

describe('cut()', () => {
  it('refuses connections until the wire is mended at the same address', async () => {
    const { listener } = counting()
    const wire = await wireTo(listener)
    const { url } = wire
    expect((await fetch(url)).status).toBe(201)
    await wire.cut()
    expect(await failure(fetch(url))).toBe('ECONNREFUSED')
    await wire.mend()
    expect(wire.url).toBe(url)
    expect((await fetch(url)).status).toBe(201)
  })

  it('breaks a request that waits for its answer, on both sides', async () => {
    const reached = Promise.withResolvers<void>()
    const broken = Promise.withResolvers<void>()
    const wire = await wireTo((question) => {
      question.socket.on('close', () => broken.resolve())
      reached.resolve()
    })
    const failed = failure(fetch(wire.url))
    await reached.promise
    await wire.cut()
    expect(await failed).toMatch(/ECONNRESET|UND_ERR_SOCKET/)
    await broken.promise
  })
})

describe('loseNextAnswer()', () => {
  it('lets the request be done and its answer be lost, once, and touches no other', async () => {
    const { listener, written } = counting()
    const wire = await wireTo(listener)
    const lost = wire.loseNextAnswer(/^POST \/records/)
    expect((await fetch(`${wire.url}/records`)).status).toBe(201)
    expect(await failure(fetch(`${wire.url}/records`, { method: 'POST', body: 'one' }))).toMatch(
      /ECONNRESET|UND_ERR_SOCKET/,
    )
    expect(await lost).toEqual({ asked: 'POST /records', status: 201 })
    expect(written).toEqual(['one'])
    expect((await fetch(`${wire.url}/records`, { method: 'POST', body: 'two' })).status).toBe(201)
    expect(written).toEqual(['one', 'two'])
  })

  it('breaks as soon as the service was asked, where that is wanted', async () => {
    const wire = await wireTo(() => {
      // never answers
    })
    const lost = wire.loseNextAnswer(/^PUT /, { when: 'asked' })
    expect(await failure(fetch(wire.url, { method: 'PUT', body: 'typed' }))).toMatch(/ECONNRESET|UND_ERR_SOCKET/)
    expect(await lost).toEqual({ asked: 'PUT /', status: undefined })
  })

  it('tells the test when what was to be done meanwhile fails', async () => {
    const { listener } = counting()
    const wire = await wireTo(listener)
    const lost = wire.loseNextAnswer(/./, { meanwhile: () => Promise.reject(new Error('no such process')) })
    const asked = fetch(wire.url).catch(() => undefined)
    await expect(lost).rejects.toThrow('no such process')
    await wire.cut()
    await asked
  })
})

describe('a service that is killed', () => {
  const database = useTestDatabase()

  it('is away after it has answered to the wire, and comes up again at the same address', async () => {
    const service = await ServiceProcess.start({ appUrl: database.appUrl, jobs: false })
    const wire = new Wire(service.url)
    await wire.open()
    onTestFinished(async () => {
      await wire.close()
      await service.kill()
    })
    const health = `${wire.url}/api/v1/health`
    expect((await fetch(health)).status).toBe(200)

    const lost = wire.loseNextAnswer(/health/, { meanwhile: () => service.kill() })
    await failure(fetch(health))
    expect((await lost).status).toBe(200)
    await failure(fetch(health))

    await service.start()
    expect((await fetch(health)).status).toBe(200)
  })
})
