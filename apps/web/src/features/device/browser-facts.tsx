import { useQuery } from '@tanstack/react-query'
import { openDeviceBook } from '../../offline/device-book.ts'
import { findHolder } from '../../offline/holder.ts'
import { useSite } from '../../session/site-access.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { sizeText } from './device-words.ts'
import classes from './device.module.css'

interface Facts {
  stores: boolean
  hasKey: boolean
  persisted: boolean | undefined
  usedBytes: number | undefined
}

async function readFacts(personId: string): Promise<Facts> {
  const stores = await openDeviceBook()
  const holder = await findHolder()
  // `storage` is missing where the address is not secure
  const { storage } = navigator as { storage?: StorageManager }
  return {
    stores,
    hasKey: holder?.personId === personId,
    persisted: await storage?.persisted(),
    usedBytes: (await storage?.estimate())?.usage,
  }
}

/** What this browser can and cannot do for the person. */
export function BrowserFacts() {
  const { me } = useSite()
  const { data } = useQuery({ queryKey: ['browser-facts', me.id], queryFn: () => readFacts(me.id), staleTime: 0 })
  if (!data) return null
  return (
    <PagePart title="This browser">
      <ul className={classes.facts}>
        {sentences(data).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </PagePart>
  )
}

function sentences({ stores, hasKey, persisted, usedBytes }: Facts): string[] {
  if (!stores)
    return ['This browser keeps nothing: what you type lasts as long as its page. A private window does that.']
  return [
    hasKey
      ? 'What you write here is sealed under your own key. Signing out takes the key off this device: then nobody reads it until you sign in again.'
      : 'The key that seals what you write has not come to this device yet, so nothing that you type is kept. It comes with the next answer of the service.',
    globalThis.isSecureContext
      ? 'The pages start without a network too. Add Shaftbook to the home screen from the menu of the browser.'
      : 'This address is not secure (http), so the browser does not let the pages start without a network: keep the page open, or ask for an https address.',
    ...(persisted === undefined
      ? []
      : [
          persisted
            ? 'The browser has promised not to clear it when space runs short.'
            : 'The browser may clear it when space runs short: send what waits before the device is put away.',
        ]),
    ...(usedBytes === undefined ? [] : [`Used on this device: ${sizeText(usedBytes)}.`]),
  ]
}
