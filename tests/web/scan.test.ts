import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { heading } from '../support/at-the-screen.ts'
import { launchChromium } from '../support/chromium.ts'
import { onWhite, writeStill } from '../support/code-video.ts'
import { phone, signIn, useOpenBook } from '../support/open-book.ts'
import { readPrinted } from '../support/printed.ts'

const book = useOpenBook()
let folder: string
let place: { id: string; tag: string }
let browser: Browser | undefined

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shaftbook-scan-'))
  const [row] = await book.sql<typeof place>(`
    select p.id, p.tag from position p
    join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
    join grease_plan g on g.site_id = p.site_id and g.position_id = p.id and g.ended_at is null
    where p.retired_at is null order by p.tag limit 1`)
  place = row!
})
afterEach(() => browser?.close())
afterAll(() => rm(folder, { recursive: true, force: true }))

/** A phone whose camera looks at a film, or that has none. */
async function phoneWith(args: string[], permissions: string[] = []): Promise<Page> {
  browser = await launchChromium({
    args: ['--no-sandbox', '--disable-background-networking', '--disable-quic', ...args],
  })
  const context = await browser.newContext({ viewport: phone, hasTouch: true, baseURL: book.url, permissions })
  const page = await context.newPage()
  await signIn(page, 'technician')
  return page
}

/** The label of the position as the service prints it, held before the camera. */
async function filmOfLabel(): Promise<string> {
  const page = await book.signedIn('technician')
  const reply = await page.request.get(`/api/v1/sites/harrow-point/position-labels?ids=${place.id}`)
  const label = await (await readPrinted(await reply.body())).picture(1, 200)
  const file = join(folder, 'label.y4m')
  await writeStill(file, onWhite(label, 640, 480))
  await page.context().close()
  return file
}

const camera = (film: string): string[] => [
  '--use-fake-device-for-media-stream',
  `--use-file-for-fake-video-capture=${film}`,
]

describe('the scan page', () => {
  it('leads from a printed label before the camera to its position, and on to the work there', async () => {
    const page = await phoneWith(camera(await filmOfLabel()), ['camera'])
    await page.goto('/harrow-point/positions')
    await page.getByRole('link', { name: 'Scan a label' }).click()
    await heading(page, place.tag)
    expect(new URL(page.url()).pathname).toBe(`/harrow-point/at/${encodeURIComponent(place.tag)}`)
    expect(await page.getByRole('link', { name: 'Log a greasing' }).isVisible()).toBe(true)
    await page.getByRole('link', { name: 'Start a mount' }).click()
    await page.waitForURL(`**/positions/${place.id}/remount`)
  })

  it('says why there is no picture and goes on by typing, as a scanner does that presses Enter', async () => {
    const page = await phoneWith([])
    await page.goto('/harrow-point/scan')
    await page.getByText('No camera here').waitFor()
    const field = page.getByLabel('Or type the tag')
    await field.fill('NO-SUCH-TAG')
    await field.press('Enter')
    await page.getByText('No position of Harrow Point has this tag').waitFor()
    await field.fill(`${book.url}/harrow-point/at/${encodeURIComponent(place.tag)}`)
    await field.press('Enter')
    await heading(page, place.tag)
    expect(new URL(page.url()).pathname).toBe(`/harrow-point/at/${encodeURIComponent(place.tag)}`)
  })

  it('says that the camera was refused, and how to go on', async () => {
    const page = await phoneWith(['--use-fake-device-for-media-stream'])
    await page.goto('/harrow-point/scan')
    await page.getByText('The camera is not allowed').waitFor()
    expect(await page.getByRole('button', { name: 'Start the camera again' }).isVisible()).toBe(true)
  })
})

describe('the address on a label', () => {
  it('finds the position by its tag, in any letter case, and by its id', async () => {
    const page = await book.signedIn('technician', { viewport: phone })
    for (const reference of [place.tag.toLowerCase(), place.id]) {
      await page.goto(`/harrow-point/at/${reference}`)
      await heading(page, place.tag)
    }
    expect(await page.getByRole('link', { name: 'Open the position' }).getAttribute('href')).toContain(place.id)
  })
})
