import { UnstyledButton } from '@mantine/core'
import { useDisclosure } from '@mantine/hooks'
import type { ReactNode } from 'react'
import { AppLink } from './link.tsx'
import { BookMark, destinations, type DestinationKey } from './destinations.tsx'
import { MoreSheet } from './more-sheet.tsx'
import { AfterTitleProvider } from './page-title.tsx'
import { PersonMenu, type FramePerson } from './person-menu.tsx'
import { SiteSwitcher, type FrameSite } from './site-switcher.tsx'
import classes from './app-frame.module.css'

export interface AppFrameProps {
  /** Where each destination leads. */
  hrefs: Record<DestinationKey, string>
  active: DestinationKey | null
  /** Open flags of the site; absent while unknown. */
  flagCount?: number | undefined
  sites: FrameSite[]
  siteId: string
  onSite: (siteId: string) => void
  person: FramePerson
  onSignOut: () => void
  /** How it stands with this device, as a DeviceMark. */
  device: ReactNode
  /** Shown above every page, such as "no network: what you log is kept here". */
  banner?: ReactNode
  children: ReactNode
}

/** The frame round every page: a side column on a desk, a bottom bar on a phone. */
export function AppFrame(props: AppFrameProps) {
  const { sites, siteId, onSite, person, onSignOut, device, banner, children } = props
  const [moreOpen, more] = useDisclosure(false)
  const siteName = sites.find((site) => site.id === siteId)?.name
  const inMore = destinations.slice(4).some(({ key }) => key === props.active)

  return (
    <div className={classes.frame}>
      <a className={classes.skip} href="#page">
        Skip to the page
      </a>

      <header className={classes.side}>
        <div className={classes.brand}>
          <BookMark />
          <span className={classes.brandName}>Shaftbook</span>
        </div>
        <SiteSwitcher sites={sites} siteId={siteId} onSite={onSite} />
        <nav className={classes.sideNav} aria-label="Main">
          <ul className={classes.places}>
            {destinations.map((place) => (
              <li key={place.key}>
                <Place {...props} place={place} className={classes.sidePlace} />
              </li>
            ))}
          </ul>
        </nav>
        {device}
        <PersonMenu person={person} onSignOut={onSignOut} />
      </header>

      {banner && <div className={classes.banner}>{banner}</div>}
      <main id="page" tabIndex={-1} className={classes.page}>
        <AfterTitleProvider value={siteName ?? null}>{children}</AfterTitleProvider>
      </main>

      <nav className={classes.bottom} aria-label="Main">
        {destinations.slice(0, 4).map((place) => (
          <Place key={place.key} {...props} place={place} className={classes.bottomPlace} />
        ))}
        <UnstyledButton
          className={classes.bottomPlace}
          onClick={more.open}
          aria-haspopup="dialog"
          aria-expanded={moreOpen}
          data-active={inMore || undefined}
        >
          <svg viewBox="0 0 20 20" width="20" height="20" stroke="currentColor" strokeWidth="1.5" aria-hidden="true">
            <path d="M3 5.5h14M3 10h14M3 14.5h14" strokeLinecap="round" />
          </svg>
          <span>More</span>
        </UnstyledButton>
      </nav>
      <MoreSheet {...props} opened={moreOpen} onClose={more.close} />
    </div>
  )
}

interface PlaceProps extends Pick<AppFrameProps, 'hrefs' | 'active' | 'flagCount'> {
  place: (typeof destinations)[number]
  className: string | undefined
}

function Place({ hrefs, active, flagCount, place, className }: PlaceProps) {
  const isActive = active === place.key
  const count = place.key === 'flags' && flagCount ? flagCount : null
  return (
    <AppLink
      href={hrefs[place.key]}
      className={className}
      aria-current={isActive ? 'page' : undefined}
      data-active={isActive || undefined}
    >
      {place.glyph}
      <span>{place.label}</span>
      {count !== null && (
        <span className={classes.count}>
          {count > 999 ? '999+' : count}
          <span className="visually-hidden"> open</span>
        </span>
      )}
    </AppLink>
  )
}
