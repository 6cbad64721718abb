import type { Page, Request } from 'playwright-core'

/**
 * Watches what a page asks for, from now on.
 * @returns waits until the page has its title and, over two drawn frames, asks for nothing more
 */
export function watchRequests(page: Page): () => Promise<void> {
  const asked = new Set<Request>()
  page.on('request', (request) => asked.add(request))
  page.on('requestfinished', (request) => asked.delete(request))
  page.on('requestfailed', (request) => asked.delete(request))
  return async () => {
    await page.getByRole('heading', { level: 1 }).waitFor()
    for (let quiet = false; !quiet;) {
      const before = asked.size
      await twoFrames(page)
      quiet = before === 0 && asked.size === 0
    }
  }
}

/** Until the browser has drawn what it knows. */
export async function twoFrames(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise<void>((drawn) => requestAnimationFrame(() => requestAnimationFrame(() => drawn()))),
  )
}

/** Until nothing moves any more: transitions are over, the page has nothing left to work out, and that is drawn. */
export async function stillness(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const ending = () =>
      document
        .getAnimations()
        .filter((move) => move.playState === 'running' && move.effect?.getComputedTiming().iterations !== Infinity)
    // what ends may set something else in motion in the next frame
    for (let moves = ending(); moves.length > 0; moves = ending()) {
      await Promise.allSettled(moves.map((move) => move.finished))
      await new Promise<void>((drawn) => requestAnimationFrame(() => drawn()))
    }
    await new Promise<void>((idle) => requestIdleCallback(() => idle()))
  })
  await twoFrames(page)
}
