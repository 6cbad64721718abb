import { useOutbox } from '../../offline/use-device.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import classes from './device.module.css'

/** At a position: what is written of it on this device and not in the book yet, so that nobody writes it twice. */
export function WaitingHere({ positionId }: { positionId: string }) {
  const { me, code } = useSite()
  const waiting = useOutbox(me.id).filter((item) => item.positionId === positionId && item.state !== 'sent')
  const subjects = [...new Set(waiting.map(({ subjectText }) => subjectText))]
  if (subjects.length === 0) return null
  return (
    <output className={classes.waitingHere}>
      On this device and not in the book yet: {subjects.join(', ')}.{' '}
      <AppLink href={paths.device(code)}>See what waits</AppLink>
    </output>
  )
}
