import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { serve } from '../../../api/src/main.ts'
import { demoSignIns, loadDemo } from '../../../../seeds/load-demo.ts'
import { launchChromium } from '../../../../tests/support/chromium.ts'
import { buildWeb, webFolder } from '../build-web.ts'
import { withClient } from '../database-client.ts'
import { startEmbeddedPostgres } from '../embedded-postgres.ts'
import { prepareDatabase } from '../prepare-database.ts'
import { runCommand } from '../run-command.ts'

/** Takes the README's pictures from the running demo, in a database that is thrown away. */
await runCommand(async (stopped) => {
  const pictures = new URL('../../../../apps/web/pictures/', import.meta.url).pathname
  const dataFolder = mkdtempSync(join(tmpdir(), 'shaftbook-pictures-'))
  const database = await startEmbeddedPostgres({ dataFolder })
  try {
    await prepareDatabase(database.ownerUrl)
    await loadDemo({ ownerUrl: database.ownerUrl })
    await buildWeb(stopped)
    const service = await serve({ appUrl: database.appUrl, port: 0, webDir: webFolder, jobs: false })
    const browser = await launchChromium()
    try {
      mkdirSync(pictures, { recursive: true })
      await takeAll(browser, service.url, await placesToShow(database.ownerUrl), pictures)
    } finally {
      await browser.close()
      await service.close()
    }
  } finally {
    await database.stop()
    rmSync(dataFolder, { recursive: true, force: true })
  }
})

interface Places {
  position: string
  mount: string
  sleeve: string
}

/** A position with some history whose last mount finished over its band, its record, and a sleeve. */
async function placesToShow(ownerUrl: string): Promise<Places> {
  return await withClient(ownerUrl, async (client) => {
    const { rows } = await client.query<{ id: string }>("select id from site where code = 'harrow-point'")
    await client.query("select set_config('app.site', $1, false)", [rows[0]?.id])
    const found = await client.query<Places>(`
      select p.id as position, f.mount_record_id as mount,
        (select l.part_id from kit_line l join part on part.site_id = l.site_id and part.id = l.part_id
         where l.site_id = p.site_id and l.kit_id = p.kit_id and part.kind = 'sleeve' limit 1) as sleeve
      from position p
      join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
      join mount_record m on m.site_id = f.site_id and m.id = f.mount_record_id and m.verdict = 'over'
      order by (select count(*) from fitment h where h.site_id = p.site_id and h.position_id = p.id) desc, p.tag limit 1`)
    const [places] = found.rows
    if (!places) throw new Error('the demo has no mount over its band to show')
    return places
  })
}

async function takeAll(browser: Browser, url: string, places: Places, pictures: string): Promise<void> {
  const desk = await signedIn(browser, url, { width: 1280, height: 860 })
  const phone = await signedIn(browser, url, { width: 390, height: 844 })
  const site = `${url}/harrow-point`
  const shots: [Page, string, string][] = [
    [desk, 'flags', `${site}/flags`],
    [desk, 'positions', `${site}/positions`],
    [desk, 'position', `${site}/positions/${places.position}`],
    [desk, 'mount-record', `${site}/mounts/${places.mount}`],
    [desk, 'greasing', `${site}/greasing`],
    [desk, 'stores', `${site}/stores/parts/${places.sleeve}`],
    [desk, 'life', `${site}/life`],
    [desk, 'setup', `${site}/setup`],
    [phone, 'phone-flags', `${site}/flags`],
    [phone, 'phone-position', `${site}/positions/${places.position}`],
    [phone, 'phone-remount', `${site}/positions/${places.position}/remount`],
  ]
  for (const [page, name, address] of shots) {
    await page.goto(address)
    await page.waitForLoadState('networkidle')
    if (name === 'phone-remount') await typeReadings(page)
    await page.screenshot({ path: join(pictures, `${name}.png`) })
    console.log(`  ${name}.png`)
  }
}

/** Goes to where the gauge is, with a mount that is nearly there. */
async function typeReadings(page: Page): Promise<void> {
  for (const row of ['A', 'B']) {
    await page.getByLabel(`Bench, row ${row}, reading 1`).fill('0,125')
    await page.getByLabel(`Mounted, row ${row}, reading 1`).fill(row === 'A' ? '0,085' : '0,080')
  }
  await page.getByLabel('Mounted, row B, reading 1').evaluate((field) => {
    field.scrollIntoView({ block: 'start' })
    window.scrollBy(0, -120)
  })
}

async function signedIn(browser: Browser, url: string, viewport: { width: number; height: number }): Promise<Page> {
  const engineer = demoSignIns.find(({ role }) => role === 'engineer')
  if (!engineer) throw new Error('the demo has no engineer')
  const context = await browser.newContext({ viewport, colorScheme: 'light', reducedMotion: 'reduce', locale: 'en-GB' })
  const page = await context.newPage()
  await page.goto(`${url}/sign-in`)
  await page.getByLabel('E-mail').fill(engineer.email)
  await page.getByRole('textbox', { name: 'Password' }).fill(engineer.password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('navigation', { name: 'Main' }).first().waitFor()
  return page
}
