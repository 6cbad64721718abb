import type { Page } from 'playwright-core'

/** Everything that lies in the device's book, as text. */
export async function deviceText(page: Page): Promise<string> {
  return await page.evaluate(async () => {
    const opened = indexedDB.open('shaftbook')
    await new Promise((resolve) => opened.addEventListener('success', resolve))
    const names = [...opened.result.objectStoreNames]
    const rows = await Promise.all(
      names.map(
        (name) =>
          new Promise<unknown[]>((resolve) => {
            const read = opened.result.transaction(name).objectStore(name).getAll()
            read.addEventListener('success', () => resolve([name, ...read.result]))
          }),
      ),
    )
    const latin = new TextDecoder('latin1')
    return JSON.stringify(rows, (_key, value: unknown) => (value instanceof Uint8Array ? latin.decode(value) : value))
  })
}
