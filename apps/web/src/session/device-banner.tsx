import { UnstyledButton } from '@mantine/core'
import { keptSince } from '../offline/keeping.ts'
import { probe } from '../offline/network.ts'
import { useDeviceBook } from '../offline/use-device.ts'
import { paths } from '../paths.ts'
import { AppLink } from '../ui/link.tsx'
import { Timestamp } from '../ui/timestamp.tsx'
import classes from './device-banner.module.css'
import type { SiteAccess } from './site-access.tsx'

/** The one place that says that the pages speak from this device, and as of when. */
export function SilentBanner({ access }: { access: SiteAccess }) {
  const since = useDeviceBook(() => keptSince(access.code), `since/${access.code}`)
  return (
    <output className={classes.banner}>
      <strong>No network.</strong>{' '}
      {since ? (
        <>
          From this device, as of <Timestamp at={since} timeZone={access.site.timeZone} relative={false} />.
        </>
      ) : (
        'Nothing of the book is kept on this device.'
      )}{' '}
      What you write is kept here and sent later.{' '}
      <UnstyledButton className={classes.act} onClick={() => void probe()}>
        Try the network
      </UnstyledButton>
    </output>
  )
}

/** The session is over while records wait: nobody but the person can send them. */
export function SignInBanner({ access }: { access: SiteAccess }) {
  return (
    <output className={classes.banner}>
      <strong>Your session is over.</strong> What you wrote is kept on this device.{' '}
      <AppLink href={`${paths.signIn}?next=${encodeURIComponent(paths.device(access.code))}`}>
        Sign in again to send it
      </AppLink>
    </output>
  )
}
