import type { BrowserContext, CDPSession } from 'playwright-core'
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
  const ready = Promise.withResolvers<void>()
  await page.exposeFunction('fieldIsReady', () => ready.resolve())
  await page.addInitScript(typeInto, firstField)
  await page.goto(address, { waitUntil: 'commit' })
  await ready.promise
  await page.keyboard.press('7')
  const shown = await page.waitForFunction(() => globalThis.typedShownMs)
  const usableMs = (await shown.jsonValue()) ?? Infinity
  await page.close()
  return { usableMs, requests: requests() }
}

declare global {
  // oxlint-disable-next-line no-var -- only so is it a property of the page's window
  var typedShownMs: number | undefined
  function fieldIsReady(): Promise<void>
}

/**
 * Runs in the page from its first moment: goes into the field once it is there and enabled, and notes when the frame was
 * painted in which it shows what was typed. Watching from within costs the slowed-down page less than from outside.
 */
function typeInto(label: string): void {
  const look = (): void => {
    const labels = [...document.querySelectorAll('label')]
    const field = labels.find(({ textContent }) => textContent.startsWith(label))?.control
    if (!(field instanceof HTMLInputElement) || field.disabled) return
    watch.disconnect()
    field.addEventListener('input', () => requestAnimationFrame(noteAfterPaint))
    field.focus()
    void globalThis.fieldIsReady()
  }
  const noteAfterPaint = (): void => {
    const afterPaint = new MessageChannel()
    afterPaint.port1.addEventListener('message', () => (globalThis.typedShownMs = performance.now()))
    afterPaint.port1.start()
    afterPaint.port2.postMessage(null)
  }
  const watch = new MutationObserver(look)
  watch.observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ['disabled'] })
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
