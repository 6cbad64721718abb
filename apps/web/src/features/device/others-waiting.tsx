import { othersWaiting } from '../../offline/outbox-rows.ts'
import { useDeviceBook } from '../../offline/use-device.ts'
import { useSite } from '../../session/site-access.tsx'
import { othersSentence } from './device-words.ts'
import classes from './device.module.css'

/** Other people with records on this device that wait for their sign-in. */
export function OthersWaiting() {
  const { me } = useSite()
  const others = useDeviceBook(() => othersWaiting(me.id), `others/${me.id}`) ?? []
  if (others.length === 0) return null
  return (
    <ul className={classes.others} aria-label="Records of other people">
      {others.map((other) => (
        <li key={other.id}>{othersSentence(other)}</li>
      ))}
    </ul>
  )
}
