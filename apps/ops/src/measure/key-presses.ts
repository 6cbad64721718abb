import type { BrowserContext, Locator, Page } from 'playwright-core'
import { benchReading, mountedReading, sheetAddress, verdictOfReadings } from './screens.ts'
import { openSlowPage } from './slow-phone.ts'

const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9']

/**
 * Real key presses on a reading of a sheet, each of which changes the verdict on the screen.
 * @returns for each press the time from the key until the frame with its verdict was painted, ms
 */
export async function pressKeys(context: BrowserContext, site: string, position: string, count: number) {
  const { page } = await openSlowPage(context)
  await page.goto(sheetAddress(site, position, 'bench'))
  for (const row of ['A', 'B']) await benchReading(page, row, 1).fill('0,125')
  await page.goto(sheetAddress(site, position, 'drive'))
  await mountedReading(page, 'B', 1).fill('0,080')
  const field = mountedReading(page, 'A', 1)
  await field.fill('0,08')
  await watchVerdict(verdictOfReadings(page))
  const times: number[] = []
  for (let press = 0; press < count; press += 1) {
    const digit = digits[(press / 2) % digits.length] ?? 'Backspace'
    times.push(await pressed(page, field, press % 2 === 0 ? digit : 'Backspace'))
  }
  await page.close()
  return times
}

async function pressed(page: Page, field: Locator, key: string): Promise<number> {
  await field.press(key)
  const painted = await page.waitForFunction(() => globalThis.verdictPainted)
  const ms = await painted.evaluate((value) => value as number)
  await page.evaluate(() => (globalThis.verdictPainted = undefined))
  return ms
}

declare global {
  // oxlint-disable-next-line no-var -- only so is it a property of the page's window
  var verdictPainted: number | undefined
}

/** From now on the page notes how long after a key the frame was painted in which the verdict's words are others. */
async function watchVerdict(verdict: Locator): Promise<void> {
  await verdict.evaluate((part) => {
    document.addEventListener(
      'keydown',
      ({ timeStamp }) => {
        const before = part.textContent
        const watch = new MutationObserver(() => {
          if (part.textContent === before) return
          watch.disconnect()
          requestAnimationFrame(() => {
            const afterPaint = new MessageChannel()
            afterPaint.port1.addEventListener('message', () => {
              globalThis.verdictPainted = performance.now() - timeStamp
            })
            afterPaint.port1.start()
            afterPaint.port2.postMessage(null)
          })
        })
        watch.observe(part, { subtree: true, childList: true, characterData: true, attributes: true })
      },
      true,
    )
  })
}
