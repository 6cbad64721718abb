import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll } from 'vitest'
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
import type { Config } from '../../apps/api/src/config.ts'
import { serve } from '../../apps/api/src/main.ts'
import { webFolder } from '../../apps/ops/src/build-web.ts'
import { demoSignIns, loadDemo, type DemoSignIn } from '../../seeds/load-demo.ts'
import { withClient } from '../../apps/ops/src/database-client.ts'
import { launchChromium } from './chromium.ts'
import { useTestDatabase } from './database.ts'
import { ServiceProcess } from './service-process.ts'
import { Wire } from './wire.ts'

export const phone = { width: 390, height: 844 }
export const narrowPhone = { width: 360, height: 740 }
export const desk = { width: 1440, height: 900 }

/** The demo plant served to a real browser, for one test file. */
export interface OpenBook {
  readonly url: string
  /** A person's own browser, signed in; closed at the end of the file. */
  signedIn(role: DemoSignIn['role'], options?: BrowserContextOptions): Promise<Page>
  /** Looks at a site's rows as the owner does, Harrow Point's where none is named, to find a record to open. */
  sql<Row extends object>(text: string, values?: unknown[], siteCode?: string): Promise<Row[]>
  /** A browser that nobody has signed in to. */
  stranger(options?: BrowserContextOptions): Promise<Page>
}

/** An open book whose browsers reach the service by a wire that can be cut, and whose service can be killed. */
export interface WiredBook extends OpenBook {
  readonly wire: Wire
  readonly service: ServiceProcess
}

/** How browsers reach the service. */
interface Access {
  readonly url: string
  close(): Promise<void>
}

type Settings = Partial<Config> & Pick<Config, 'appUrl'>

/** Gives the test file that calls it the demo plant as {@link useOpenBook} does, behind a wire. */
export function useWiredBook(own: Partial<Config> = {}): WiredBook {
  const ground: { wire?: Wire; service?: ServiceProcess } = {}
  const book = useOpenBook(async (settings) => {
    const service = await ServiceProcess.start({ ...settings, ...own })
    const wire = new Wire(service.url)
    await wire.open()
    Object.assign(ground, { service, wire })
    return {
      url: wire.url,
      async close() {
        await wire.close()
        await service.kill()
      },
    }
  })
  const standing = <T>(thing: T | undefined): T => {
    if (thing === undefined) throw new Error('The wire stands only once the tests run.')
    return thing
  }
  return Object.defineProperties(book as WiredBook, {
    wire: { get: () => standing(ground.wire) },
    service: { get: () => standing(ground.service) },
  })
}

/** Gives the test file that calls it a database with the demo, the service on a free port, and a browser. */
export function useOpenBook(open: (settings: Settings) => Promise<Access> = serve): OpenBook {
  const database = useTestDatabase()
  const running: { service?: Access; browser?: Browser; photoFolder?: string } = {}

  beforeAll(async () => {
    await loadDemo({ ownerUrl: database.ownerUrl })
    running.photoFolder = await mkdtemp(join(tmpdir(), 'shaftbook-photos-'))
    running.service = await open({
      appUrl: database.appUrl,
      port: 0,
      webDir: webFolder,
      jobs: false,
      signInTriesPerMinute: 1000,
      photoStore: { kind: 'folder', folder: running.photoFolder },
    })
    running.browser = await launchChromium()
  }, 120_000)
  afterAll(async () => {
    await running.browser?.close()
    await running.service?.close()
    if (running.photoFolder) await rm(running.photoFolder, { recursive: true, force: true })
  })

  const url = (): string => {
    if (!running.service) throw new Error('The book is open only once the tests run.')
    return running.service.url
  }
  const context = (options: BrowserContextOptions): Promise<BrowserContext> => {
    if (!running.browser) throw new Error('The browser is open only once the tests run.')
    return running.browser.newContext({ viewport: desk, reducedMotion: 'reduce', baseURL: url(), ...options })
  }
  return {
    get url() {
      return url()
    },
    async sql<Row extends object>(text: string, values: unknown[] = [], siteCode = 'harrow-point') {
      return await withClient(database.ownerUrl, async (client) => {
        const { rows } = await client.query<{ id: string }>('select id from site where code = $1', [siteCode])
        await client.query(`set app.site = '${rows[0]?.id}'`)
        return (await client.query<Row>(text, values)).rows
      })
    },
    async stranger(options = {}) {
      return await (await context(options)).newPage()
    },
    async signedIn(role, options = {}) {
      const page = await (await context(options)).newPage()
      await signIn(page, role)
      return page
    },
  }
}

/** Signs in as a person does: at the form, by its labels. */
export async function signIn(page: Page, role: DemoSignIn['role']): Promise<void> {
  const person = demoSignIns.find((known) => known.role === role)
  if (!person) throw new Error(`The demo has nobody who is ${role}.`)
  await page.goto('/sign-in')
  await page.getByLabel('E-mail').fill(person.email)
  await page.getByRole('textbox', { name: 'Password' }).fill(person.password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('navigation', { name: 'Main' }).first().waitFor()
}
