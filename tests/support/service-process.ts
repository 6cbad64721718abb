import { serve } from '../../apps/api/src/main.ts'
import type { Config } from '../../apps/api/src/config.ts'
import { freePort } from '../../apps/ops/src/free-port.ts'
import { RunningCommand } from './running-command.ts'

type Settings = Partial<Config> & Pick<Config, 'appUrl'>

/** The service in a process of its own that can be killed and comes up again on the same port and database. */
export class ServiceProcess {
  readonly #settings: Settings
  #running: RunningCommand | undefined

  constructor(settings: Settings) {
    this.#settings = settings
  }

  get url(): string {
    return `http://127.0.0.1:${this.#settings.port}`
  }

  static async start(settings: Settings): Promise<ServiceProcess> {
    const service = new ServiceProcess({ ...settings, port: await freePort(0) })
    await service.start()
    return service
  }

  /** Waits until it listens. */
  async start(): Promise<void> {
    const running = new RunningCommand('tests/support/service-process.ts', [JSON.stringify(this.#settings)], {})
    this.#running = running
    await running.until('listening')
  }

  /** As when the power goes: nothing is finished, nothing closed. */
  async kill(): Promise<void> {
    await this.#running?.stop('SIGKILL')
  }
}

if (import.meta.main) {
  const { url } = await serve(JSON.parse(process.argv[2] ?? '') as Settings)
  console.log(`listening at ${url}`)
}
