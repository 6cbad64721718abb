import { constants } from 'node:os'
import { OperatorError } from './operator-error.ts'

/** Ctrl-C arrives from the terminal and again from npm; only what comes later than this is a second one. */
const secondSignalAfterMs = 1000

class Stopped extends Error {}

/**
 * Runs an operator's command to its end and ends the process: with 0, also when it was told to stop and has stopped;
 * with 1 and one sentence when the operator has something to mend. A second Ctrl-C ends it at once.
 * @param work gets a signal that is aborted by SIGINT, SIGTERM, SIGHUP or the end of the process that started this one
 */
export async function runCommand(work: (stopped: AbortSignal) => Promise<void>): Promise<never> {
  const told = new AbortController()
  // a terminal that is gone must not keep the command from stopping in order
  process.stdout.on('error', () => {})
  process.stderr.on('error', () => {})
  process.on('disconnect', () => told.abort(new Stopped()))
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) onSignal(signal, told)
  try {
    await work(told.signal)
  } catch (error) {
    // once told to stop, work that was under way breaks off with whatever error
    if (!told.signal.aborted || error instanceof OperatorError) {
      console.error(`\n${error instanceof OperatorError ? error.message : (error as Error).stack}`)
      process.exit(1)
    }
  }
  process.exit(0)
}

/** Waits for a piece of work, but not longer than until the command is told to stop. */
export function unlessStopped<T>(stopped: AbortSignal, work: Promise<T>): Promise<T> {
  const { promise, reject } = Promise.withResolvers<never>()
  if (stopped.aborted) reject(stopped.reason)
  stopped.addEventListener('abort', () => reject(stopped.reason))
  return Promise.race([work, promise])
}

function onSignal(signal: 'SIGINT' | 'SIGTERM' | 'SIGHUP', told: AbortController): void {
  let first = 0
  process.on(signal, () => {
    if (!told.signal.aborted) {
      first = performance.now()
      told.abort(new Stopped())
    } else if (performance.now() - first > secondSignalAfterMs) {
      console.error('\nStopped at once; the next start puts the database in order.')
      process.exit(128 + constants.signals[signal])
    }
  })
}
