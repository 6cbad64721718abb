import { draftsOf } from '../../offline/drafts.ts'
import { useDeviceBook } from '../../offline/use-device.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import classes from './sheet.module.css'

/** Mount sheets that this person has begun on this device and not signed; at one position, or all. */
export function UnfinishedSheets({ positionId }: { positionId?: string }) {
  const { me, site, code } = useSite()
  const drafts = useDeviceBook(() => draftsOf(me.id, code), `mount-sheets/${me.id}/${code}`) ?? []
  const wanted = positionId === undefined ? /^mount(-draft|-correction)?\// : new RegExp(`^mount/${positionId}$`)
  const sheets = drafts.filter(({ subject }) => wanted.test(subject))
  if (sheets.length === 0) return null
  return (
    <ul className={classes.unfinished} aria-label="Sheets begun on this device">
      {sheets.map(({ subject, title, address, keptAt }) => (
        <li key={subject}>
          <AppLink href={address}>Go on with the sheet{positionId === undefined && ` "${title}"`}</AppLink>
          <span className={classes.hint}>
            last typed <Timestamp at={keptAt} timeZone={site.timeZone} />
          </span>
        </li>
      ))}
    </ul>
  )
}
