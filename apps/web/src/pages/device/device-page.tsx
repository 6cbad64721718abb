import { BrowserFacts } from '../../features/device/browser-facts.tsx'
import { deviceSentence } from '../../features/device/device-words.ts'
import { KeptAreas } from '../../features/device/kept-areas.tsx'
import { NotSent } from '../../features/device/not-sent.tsx'
import { OthersWaiting } from '../../features/device/others-waiting.tsx'
import { SentLately } from '../../features/device/sent-lately.tsx'
import { Unfinished } from '../../features/device/unfinished.tsx'
import { useDeviceState, useOutbox } from '../../offline/use-device.ts'
import { useSite } from '../../session/site-access.tsx'
import { PageHead } from '../../ui/page-head.tsx'

/** What this device holds for the person: records to send, unfinished forms, and the parts of the book to read at the shaft. */
export function DevicePage() {
  const { me } = useSite()
  const items = useOutbox(me.id)
  const { silent, phase } = useDeviceState()
  const open = items.filter(({ state }) => state !== 'sent')
  return (
    <>
      <PageHead title="This device" sentence={deviceSentence(open, silent)} />
      <NotSent items={open} sending={phase === 'sending'} />
      <OthersWaiting />
      <Unfinished />
      <KeptAreas />
      <SentLately items={items.filter(({ state }) => state === 'sent')} />
      <BrowserFacts />
    </>
  )
}
