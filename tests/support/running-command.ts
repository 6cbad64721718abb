import { spawn, type ChildProcess } from 'node:child_process'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'

const root = join(import.meta.dirname, '../..')

/** A command of the operator in a process of its own, as a person would run it. */
export class RunningCommand {
  readonly ended: Promise<number>
  readonly #child: ChildProcess
  #output = ''
  #exitCode: number | undefined

  constructor(file: string, args: string[], env: Record<string, string>) {
    const child = spawn(process.execPath, [join(root, file), ...args], {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    child.stdout.on('data', (chunk: Buffer) => (this.#output += chunk.toString()))
    child.stderr.on('data', (chunk: Buffer) => (this.#output += chunk.toString()))
    this.#child = child
    this.ended = new Promise((resolve, reject) => {
      child.on('error', reject)
      child.on('close', (code) => {
        this.#exitCode = code ?? -1
        resolve(this.#exitCode)
      })
    })
  }

  /** All that it has printed so far. */
  get output(): string {
    return this.#output
  }

  /** Waits until it has printed a text. @throws Error with all its output when it ends without having done so */
  async until(text: string): Promise<void> {
    while (!this.#output.includes(text)) {
      if (this.#exitCode !== undefined) throw new Error(`It ended without "${text}":\n${this.#output}`)
      await pause(50)
    }
  }

  /** Sends a signal and waits for the end. @returns the exit code, -1 when it was killed */
  stop(signal: NodeJS.Signals): Promise<number> {
    this.#child.kill(signal)
    return this.ended
  }
}
