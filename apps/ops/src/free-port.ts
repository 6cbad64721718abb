import { createServer } from 'node:net'
import { OperatorError } from './operator-error.ts'

/** Listens for a moment: resolves to the port (a free one where 0 was asked for), rejects as listen does. */
function tryPort(host: string, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer()
    server.once('error', reject)
    server.listen({ host, port, exclusive: true }, () => {
      const address = server.address()
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : port))
    })
  })
}

/** A free TCP port of the loopback address: the wished one where that is free. */
export async function freePort(wished: number): Promise<number> {
  return tryPort('127.0.0.1', wished).catch(() => tryPort('127.0.0.1', 0))
}

/** @throws OperatorError when the service can't listen there */
export async function requireFreePort(host: string, port: number): Promise<void> {
  try {
    await tryPort(host, port)
  } catch (error) {
    const sentence = listenProblem((error as NodeJS.ErrnoException).code ?? '', host, port)
    throw sentence === undefined ? error : new OperatorError(sentence, { cause: error })
  }
}

/** What a failed listen means to the operator, by its error code; undefined for a code not met before. */
export function listenProblem(code: string, host: string, port: number): string | undefined {
  if (code === 'EADDRINUSE') {
    return `Port ${port} on ${host} is taken by another program: stop that one, or choose another port, for example PORT=${port === 65535 ? port - 1 : port + 1}.`
  }
  if (code === 'EACCES') {
    return `Port ${port} on ${host} needs more rights than this user has: choose a port above 1023, for example PORT=4380.`
  }
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND' || code === 'EAI_AGAIN') {
    return `${host} is not an address of this machine: set HOST to one that is, for example HOST=127.0.0.1.`
  }
  return undefined
}
