import type { BrowserContext, CDPSession, Page } from 'playwright-core'
import { firstField } from './screens.ts'
import { openSlowPage } from './slow-phone.ts'

export interface Load {
  /** From the start of the navigation until a field takes what is typed and shows it. */
  readonly usableMs: number
  readonly requests: readonly LoadedRequest[]
}

interface LoadedRequest {
  readonly path: string
  readonly type: string
  /** Since the start of the navigation. */
  readonly startMs: number
  readonly endMs: number
  /** As they came through the network. */
  readonly bytes: number
}

/** Opens a mount sheet and types into it as soon as that is possible. */
export async function loadSheet(context: BrowserContext, address: string): Promise<Load> {
  const { page, devtools } = await openSlowPage(context)
  await devtools.send('Network.clearBrowserCache')
  const requests = watchRequests(devtools)
  await page.goto(address, { waitUntil: 'commit' })
  await typeWhenPossible(page)
  const usableMs = await page.evaluate(() => performance.now())
  await page.close()
  return { usableMs, requests: requests() }
}

async function typeWhenPossible(page: Page): Promise<void> {
  const field = firstField(page)
  await field.click()
  await page.keyboard.type('7')
  const handle = await field.elementHandle()
  await page.waitForFunction((input) => (input as HTMLInputElement).value.endsWith('7'), handle)
  await page.evaluate(() => new Promise<void>((drawn) => requestAnimationFrame(() => drawn())))
}

/** @returns what was loaded so far, in the order of asking */
function watchRequests(devtools: CDPSession): () => LoadedRequest[] {
  const asked = new Map<string, { path: string; type: string; start: number; end?: number; bytes?: number }>()
  devtools.on('Network.requestWillBeSent', ({ requestId, request, type, timestamp }) => {
    const { pathname, search } = new URL(request.url)
    asked.set(requestId, { path: pathname + search, type: type ?? 'Other', start: timestamp })
  })
  devtools.on('Network.loadingFinished', ({ requestId, timestamp, encodedDataLength }) => {
    Object.assign(asked.get(requestId) ?? {}, { end: timestamp, bytes: encodedDataLength })
  })
  return () => {
    const all = [...asked.values()]
    const first = Math.min(...all.map(({ start }) => start))
    return all.flatMap(({ path, type, start, end, bytes = 0 }) =>
      end === undefined ? [] : [{ path, type, startMs: (start - first) * 1000, endMs: (end - first) * 1000, bytes }],
    )
  }
}
