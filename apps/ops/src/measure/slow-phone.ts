import type { BrowserContext, CDPSession, Page } from 'playwright-core'

/** A mid-range phone on a slow mobile network, as the browser emulates it. */
export const slowPhone = {
  viewport: { width: 390, height: 844 },
  cpuSlowdown: 4,
  downKbit: 1600,
  upKbit: 750,
  roundTripMs: 150,
}

export const slowPhoneSentence =
  `Phone of ${slowPhone.viewport.width} × ${slowPhone.viewport.height}, processor slowed down ${slowPhone.cpuSlowdown} times, ` +
  `network ${slowPhone.downKbit / 1000} Mbit/s down, ${slowPhone.upKbit / 1000} Mbit/s up, ${slowPhone.roundTripMs} ms for each request.`

/** A new page on that phone. */
export async function openSlowPage(context: BrowserContext): Promise<{ page: Page; devtools: CDPSession }> {
  const page = await context.newPage()
  const devtools = await context.newCDPSession(page)
  await devtools.send('Network.enable')
  await devtools.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: slowPhone.roundTripMs,
    downloadThroughput: (slowPhone.downKbit * 1000) / 8,
    uploadThroughput: (slowPhone.upKbit * 1000) / 8,
  })
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowPhone.cpuSlowdown })
  return { page, devtools }
}
