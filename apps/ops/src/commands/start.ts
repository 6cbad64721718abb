import { serve } from '../../../api/src/main.ts'
import { loadDemo } from '../../../../seeds/load-demo.ts'
import { buildWeb, webFolder } from '../build-web.ts'
import { withClient } from '../database-client.ts'
import { openDatabase } from '../database.ts'
import { readEnvironment } from '../environment.ts'
import { requireFreePort } from '../free-port.ts'
import { mailSettings } from '../mail-settings.ts'
import { photoSettings } from '../photo-settings.ts'
import { prepareDatabase } from '../prepare-database.ts'
import { OperatorError } from '../operator-error.ts'
import { runCommand, unlessStopped } from '../run-command.ts'
import { Steps } from '../steps.ts'
import { welcome } from '../welcome.ts'

await runCommand(start)

/** Brings the book up, serves until told to stop, and stops in reverse order whatever happened. */
async function start(stopped: AbortSignal): Promise<void> {
  const environment = readEnvironment(process.env)
  const { HOST: host, PORT: port } = environment
  const photos = photoSettings(environment)
  const mail = mailSettings(environment)
  await requireFreePort(host, port)
  const steps = new Steps(5)
  const stops: (() => Promise<void>)[] = []
  try {
    const database = await steps.run('Database', async (say) => {
      const opened = await openDatabase(environment, say)
      stops.push(() => opened.stop())
      return [opened, opened.description]
    })
    stopped.throwIfAborted()
    await unlessStopped(stopped, prepare(steps, database.ownerUrl, environment.SHAFTBOOK_DEMO, stopped))
    const service = await steps.run('Service', async () => {
      const started = await serve({
        appUrl: database.appUrl,
        address: environment.SHAFTBOOK_ADDRESS,
        host,
        port,
        webDir: webFolder,
        secureCookies: environment.SHAFTBOOK_HTTPS,
        trustProxy: environment.SHAFTBOOK_HTTPS,
        ...photos,
        ...mail,
      })
      stops.push(() => started.close())
      return [started, `listening at ${started.url}`]
    })
    console.log(await welcome(service.url, host, database.ownerUrl))
    await unlessStopped(stopped, database.ended.then(failEnded))
  } finally {
    if (stops.length > 0) console.log('\nStopping')
    for (const stop of stops.toReversed()) await stop()
  }
}

async function prepare(steps: Steps, ownerUrl: string, wantsDemo: boolean, stopped: AbortSignal): Promise<void> {
  await steps.run('Migrations', async (say) => {
    const applied = await prepareDatabase(ownerUrl, say)
    return [undefined, applied.length === 0 ? 'up to date' : `${applied.length} applied`]
  })
  await steps.run('Demo scenario', async (say) => {
    if (!wantsDemo) return [undefined, 'not wanted (SHAFTBOOK_DEMO=no)']
    const isLoaded = await loadDemoIfEmpty(ownerUrl, say)
    return [undefined, isLoaded ? 'loaded' : 'the book has a site already']
  })
  await steps.run('Dashboard', async () => {
    const isBuilt = await buildWeb(stopped)
    return [undefined, isBuilt ? 'built' : 'already built']
  })
}

async function loadDemoIfEmpty(ownerUrl: string, say: (text: string) => void): Promise<boolean> {
  const { rowCount } = await withClient(ownerUrl, (client) => client.query('select from site limit 1'))
  if (rowCount !== 0) return false
  await loadDemo({ ownerUrl, onProgress: say })
  return true
}

function failEnded(lastWords: string): never {
  throw new OperatorError(`The database has ended by itself. Its last words:\n${lastWords}`)
}
