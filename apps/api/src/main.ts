import { buildApp } from './app.ts'
import { Config } from './config.ts'
import { startJobs } from './jobs/jobs.ts'

export interface Service {
  readonly url: string
  close(): Promise<void>
}

/** Listens; closing finishes the requests that are under way, then the jobs, then the database. */
export async function serve(settings: Partial<Config> & Pick<Config, 'appUrl'>): Promise<Service> {
  const config = Config.parse(settings)
  const app = await buildApp(config)
  try {
    const url = await app.listen({ host: config.host, port: config.port })
    const jobs = config.jobs ? await startJobs(config, app.log) : undefined
    return {
      url,
      async close() {
        await jobs?.stop()
        await app.close()
      },
    }
  } catch (error) {
    await app.close()
    throw error
  }
}
