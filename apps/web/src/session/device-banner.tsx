import { UnstyledButton } from '@mantine/core'
import { useState, useSyncExternalStore } from 'react'
import { newVersionWaits, onNewVersion, takeNewVersion } from '../lib/new-version.ts'
import { hasUnsent, onUnsentChanged } from '../lib/unsent.ts'
import { keptSince } from '../offline/keeping.ts'
import { probe } from '../offline/network.ts'
import { useDeviceBook } from '../offline/use-device.ts'
import { paths } from '../paths.ts'
import { AppLink } from '../ui/link.tsx'
import { Timestamp } from '../ui/timestamp.tsx'
import classes from './device-banner.module.css'
import type { SiteAccess } from './site-access.tsx'

/** The one place that says that the pages speak from this device, and as of when. */
function SilentBanner({ access }: { access: SiteAccess }) {
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
function SignInBanner({ access }: { access: SiteAccess }) {
  return (
    <output className={classes.banner}>
      <strong>Your session is over.</strong> What you wrote is kept on this device.{' '}
      <AppLink href={`${paths.signIn}?next=${encodeURIComponent(paths.device(access.code))}`}>
        Sign in again to send it
      </AppLink>
    </output>
  )
}

/** Whether to offer a newer version now: never while something is typed that is not sent. */
function useNewVersion(): boolean {
  const waits = useSyncExternalStore(onNewVersion, newVersionWaits)
  const unsent = useSyncExternalStore(onUnsentChanged, hasUnsent)
  return waits && !unsent
}

/** Offers a newer version; it comes only when the person says so. */
function NewVersionBanner() {
  const [otherTabs, setOtherTabs] = useState(false)
  const take = async (): Promise<void> => setOtherTabs(!(await takeNewVersion()))
  return (
    <output className={classes.banner}>
      A newer version of Shaftbook is on this device.{' '}
      {otherTabs && 'It is open in another tab too: close that one first. '}
      <UnstyledButton className={classes.act} onClick={() => void take()}>
        Start it now
      </UnstyledButton>
    </output>
  )
}

/** What the frame says above the page, the most pressing alone. */
export function DeviceBanner({ access, signInAgain, silent }: DeviceBannerProps) {
  const newVersion = useNewVersion()
  if (silent) return <SilentBanner access={access} />
  if (signInAgain) return <SignInBanner access={access} />
  return newVersion ? <NewVersionBanner /> : null
}

interface DeviceBannerProps {
  access: SiteAccess
  /** The session is over, and records wait. */
  signInAgain: boolean
  silent: boolean
}
