import { randomInt } from 'node:crypto'
import { once } from 'node:events'
import {
  Agent,
  createServer,
  request as ask,
  type ClientRequest,
  type IncomingMessage,
  type Server,
  type ServerResponse,
} from 'node:http'
import { pipeline } from 'node:stream'

/** An answer that never reached the one who asked. The status is missing where the service did not live to answer. */
export interface LostAnswer {
  readonly asked: string
  readonly status: number | undefined
}

interface Loss {
  readonly match: RegExp
  readonly when: 'answered' | 'asked'
  readonly meanwhile: () => unknown
  readonly lost: (answer: LostAnswer) => void
  readonly failed: (error: unknown) => void
}

/**
 * The line between a browser and the service: what is asked at `url` is passed on, and the line can be cut, for the
 * browser as for the service. Requests are named by method and address, such as `POST /api/v1/session`.
 */
export class Wire {
  /** What was asked through it so far, in order. */
  readonly asked: string[] = []
  readonly #serviceUrl: string
  readonly #agent = new Agent()
  readonly #losses: Loss[] = []
  readonly #underWay = new Set<ClientRequest>()
  #server: Server | undefined
  #port = 0

  constructor(serviceUrl: string) {
    this.#serviceUrl = serviceUrl
  }

  get url(): string {
    return `http://127.0.0.1:${this.#port}`
  }

  /** Takes a port at which browsers find the service from now on. */
  async open(): Promise<void> {
    // below the ports that the system gives to anybody, so that it is still free when the wire is mended
    for (let port = randomInt(20_000, 30_000); this.#server === undefined; port += 1) {
      this.#port = port
      await this.mend().catch((error: NodeJS.ErrnoException) => {
        if (error.code !== 'EADDRINUSE') throw error
      })
    }
  }

  /** Breaks every connection, also those on which an answer is awaited, and refuses new ones. */
  async cut(): Promise<void> {
    const server = this.#server
    if (!server) return
    this.#server = undefined
    const closed = once(server, 'close')
    server.close()
    server.closeAllConnections()
    for (const request of this.#underWay) request.destroy()
    await closed
  }

  /** Takes connections again, at the same address. */
  async mend(): Promise<void> {
    if (this.#server) return
    const server = createServer({ keepAliveTimeout: 60_000 }, (question, answer) => this.#pass(question, answer))
    server.listen(this.#port, '127.0.0.1')
    await once(server, 'listening')
    this.#server = server
  }

  /**
   * The next request that matches reaches the service whole; its answer does not pass, the connection breaks instead.
   * @param match is held against method and address
   * @param when the connection breaks once the service has answered, or as soon as it has been asked
   * @param meanwhile is done before the connection breaks, such as killing the service
   * @returns resolves when it has happened
   */
  loseNextAnswer(
    match: RegExp,
    { when = 'answered', meanwhile = () => {} }: Partial<Pick<Loss, 'when' | 'meanwhile'>> = {},
  ): Promise<LostAnswer> {
    const { promise, resolve, reject } = Promise.withResolvers<LostAnswer>()
    this.#losses.push({ match, when, meanwhile, lost: resolve, failed: reject })
    return promise
  }

  async close(): Promise<void> {
    await this.cut()
    this.#agent.destroy()
  }

  #pass(question: IncomingMessage, answer: ServerResponse): void {
    const asked = `${question.method} ${question.url}`
    this.asked.push(asked)
    const loss = this.#takeLoss(asked)
    const { hostname, port } = new URL(this.#serviceUrl)
    const passed = ask({
      agent: this.#agent,
      hostname,
      port,
      method: question.method,
      path: question.url,
      headers: question.rawHeaders,
    })
    this.#underWay.add(passed)
    passed.on('close', () => this.#underWay.delete(passed))
    if (loss) {
      void this.#lose(loss, asked, passed).then(() => question.socket.destroy(), loss.failed)
    } else {
      answer.on('close', () => {
        if (!answer.writableFinished) passed.destroy()
      })
      passed.on('error', () => question.socket.destroy())
      passed.on('response', (reply) => {
        answer.writeHead(reply.statusCode ?? 502, reply.rawHeaders)
        pipeline(reply, answer, (error) => error && question.socket.destroy())
      })
    }
    question.pipe(passed)
  }

  #takeLoss(asked: string): Loss | undefined {
    const index = this.#losses.findIndex(({ match }) => match.test(asked))
    return index === -1 ? undefined : this.#losses.splice(index, 1)[0]
  }

  async #lose({ when, meanwhile, lost }: Loss, asked: string, passed: ClientRequest): Promise<void> {
    const answered = statusOf(passed)
    if (when === 'answered') await answered
    else await once(passed, 'finish')
    await meanwhile()
    passed.destroy()
    lost({ asked, status: await answered })
  }
}

/** The status of an answer that has come whole, or undefined where none comes. */
function statusOf(passed: ClientRequest): Promise<number | undefined> {
  const { promise, resolve } = Promise.withResolvers<number | undefined>()
  passed.on('error', () => resolve(undefined))
  passed.on('close', () => resolve(undefined))
  passed.on('response', (reply) => {
    reply.resume()
    reply.on('end', () => resolve(reply.statusCode))
    reply.on('error', () => resolve(undefined))
  })
  return promise
}
