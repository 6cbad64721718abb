import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, BrowserContext } from 'playwright-core'
import { serve } from '../../../api/src/main.ts'
import { demoSignIns, loadDemo } from '../../../../seeds/load-demo.ts'
import { launchChromium } from '../../../../tests/support/chromium.ts'
import { Wire } from '../../../../tests/support/wire.ts'
import { scriptLimitBytes, scriptSizesFile } from '../../../web/bundle/script-budget.ts'
import type { FirstLoad } from '../../../web/bundle/script-sizes.ts'
import { buildWeb, webFolder } from '../build-web.ts'
import { withClient } from '../database-client.ts'
import { startEmbeddedPostgres } from '../embedded-postgres.ts'
import { figureLine, isMissed, median, quantile, type Figure } from '../measure/figures.ts'
import { loadSheet, type Load } from '../measure/first-load.ts'
import { startInstalled } from '../measure/installed-start.ts'
import { pressKeys } from '../measure/key-presses.ts'
import { sheetAddress, signInAt } from '../measure/screens.ts'
import { slowPhone, slowPhoneSentence } from '../measure/slow-phone.ts'
import { OperatorError } from '../operator-error.ts'
import { prepareDatabase } from '../prepare-database.ts'
import { runCommand } from '../run-command.ts'

const site = 'harrow-point'
const loads = 3
const presses = 50

/** How fast the mount sheet is on a slow phone, measured in a database that is thrown away. */
await runCommand(async (stopped) => {
  const dataFolder = mkdtempSync(join(tmpdir(), 'shaftbook-measure-'))
  const database = await startEmbeddedPostgres({ dataFolder })
  try {
    await prepareDatabase(database.ownerUrl)
    await loadDemo({ ownerUrl: database.ownerUrl })
    await buildWeb(stopped)
    const settings = { appUrl: database.appUrl, port: 0, webDir: webFolder, jobs: false, signInTriesPerMinute: 100 }
    const service = await serve(settings)
    const wire = new Wire(service.url)
    await wire.open()
    const browser = await launchChromium()
    try {
      report(await measure(browser, wire, await positionToMount(database.ownerUrl)))
    } finally {
      await browser.close()
      await wire.close()
      await service.close()
    }
  } finally {
    await database.stop()
    rmSync(dataFolder, { recursive: true, force: true })
  }
})

async function measure(browser: Browser, wire: Wire, position: string): Promise<Figure[]> {
  const address = sheetAddress(site, position)
  const cold: Load[] = []
  for (let load = 0; load < loads; load += 1) {
    const context = await signedIn(browser, wire.url, { install: false })
    cold.push(await loadSheet(context, address))
    await context.close()
  }

  const context = await signedIn(browser, wire.url, { install: true })
  const installed = await startInstalled(context, wire, site, address)
  if (process.argv.includes('--waterfall')) for (const load of [cold.at(-1), installed]) printWaterfall(load)
  const pressMs = await pressKeys(context, site, position, presses)
  const scriptBytes = cold.map(({ requests }) =>
    requests.filter(({ type }) => type === 'Script').reduce((sum, { bytes }) => sum + bytes, 0),
  )
  return [
    {
      what: `First load until a field can be typed in (median of ${loads})`,
      value: median(cold.map((load) => load.usableMs)),
      budget: 3000,
      unit: 'ms',
    },
    { what: 'Second start, installed, without a network', value: installed.usableMs, budget: 1000, unit: 'ms' },
    { what: `Key press on a reading to its verdict (median of ${presses})`, value: median(pressMs), unit: 'ms' },
    {
      what: `Key press on a reading to its verdict (95 % of ${presses})`,
      value: quantile(pressMs, 0.95),
      budget: 100,
      unit: 'ms',
    },
    ...scriptFigures(),
    { what: 'Script that came through the network until then, as sent', value: median(scriptBytes) / 1000, unit: 'kB' },
  ]
}

/** The figures of the build. */
function scriptFigures(): Figure[] {
  const all = JSON.parse(readFileSync(join(webFolder, scriptSizesFile), 'utf8')) as FirstLoad[]
  return ['start', 'pages/mounts/remount-page'].flatMap((page) => {
    const bytes = all.find((load) => load.page === page)?.bytes
    if (bytes === undefined) return []
    return [{ what: `Script of ${page}, gzip`, value: bytes / 1000, budget: scriptLimitBytes(page) / 1000, unit: 'kB' }]
  })
}

function report(figures: Figure[]): void {
  console.log(`\n${slowPhoneSentence}\n`)
  for (const figure of figures) console.log(figureLine(figure))
  const missed = figures.filter(isMissed)
  if (missed.length > 0) {
    throw new OperatorError(`Over its budget: ${missed.map(({ what }) => what).join('; ')}.`)
  }
}

function printWaterfall(load: Load | undefined): void {
  console.log('')
  for (const { path, type, startMs, endMs, bytes } of load?.requests ?? []) {
    const span = `${startMs.toFixed(0).padStart(6)} – ${endMs.toFixed(0).padStart(5)} ms`
    console.log(`${span} ${(bytes / 1000).toFixed(1).padStart(7)} kB  ${type.padEnd(10)} ${path.slice(0, 90)}`)
  }
}

/** A browser of its own in which a technician has signed in. Without `install` the pages are never laid down in it. */
async function signedIn(browser: Browser, url: string, { install }: { install: boolean }): Promise<BrowserContext> {
  const technician = demoSignIns.find(({ role }) => role === 'technician')
  if (!technician) throw new Error('the demo has no technician')
  const context = await browser.newContext({
    baseURL: url,
    viewport: slowPhone.viewport,
    isMobile: true,
    hasTouch: true,
    locale: 'en-GB',
    serviceWorkers: install ? 'allow' : 'block',
  })
  const page = await context.newPage()
  await signInAt(page, technician.email, technician.password)
  await page.close()
  return context
}

/** A position on an adapter sleeve that is judged by the generic guide. */
async function positionToMount(ownerUrl: string): Promise<string> {
  return await withClient(ownerUrl, async (client) => {
    const { rows } = await client.query<{ id: string }>('select id from site where code = $1', [site])
    await client.query("select set_config('app.site', $1, false)", [rows[0]?.id])
    const found = await client.query<{ id: string }>(`
      select p.id from position p
      join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
      join mount_record m on m.site_id = f.site_id and m.id = f.mount_record_id
      where p.seat = 'adapter-sleeve' and p.retired_at is null
        and m.judgement->'band'->'source'->>'kind' = 'generic-guide'
      order by p.tag limit 1`)
    const [position] = found.rows
    if (!position) throw new Error('the demo has no position on an adapter sleeve')
    return position.id
  })
}
