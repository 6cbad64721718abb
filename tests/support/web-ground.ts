import { buildWeb } from '../../apps/ops/src/build-web.ts'
import { requireChromium } from './chromium.ts'

/** What all browser tests need: a browser, and the dashboard as it is served. */
export default async function setup(): Promise<void> {
  requireChromium()
  await buildWeb()
}
