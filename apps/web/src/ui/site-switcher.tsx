import { UnstyledButton } from '@mantine/core'
import { Chevron } from './destinations.tsx'
import { FrameDrop } from './frame-drop.tsx'
import classes from './frame-menu.module.css'

export interface FrameSite {
  id: string
  name: string
}

interface SiteSwitcherProps {
  sites: FrameSite[]
  siteId: string
  onSite: (siteId: string) => void
}

/** The site shown now; a choice when the person belongs to several. */
export function SiteSwitcher({ sites, siteId, onSite }: SiteSwitcherProps) {
  const current = sites.find(({ id }) => id === siteId)
  if (sites.length < 2) return <p className={classes.single}>{current?.name}</p>
  return (
    <FrameDrop
      label="Change site"
      buttonLabel={`Site: ${current?.name ?? 'none'}. Change site`}
      button={
        <>
          <span className={classes.triggerText}>{current?.name ?? 'Choose a site'}</span>
          <Chevron />
        </>
      }
      edge="start"
      width={240}
    >
      {(panelId) => (
        <ul className={classes.sites}>
          {sites.map((site) => (
            <li key={site.id}>
              <UnstyledButton
                className={classes.site}
                aria-current={site.id === siteId}
                popoverTarget={panelId}
                popoverTargetAction="hide"
                onClick={() => onSite(site.id)}
              >
                {site.name}
                {site.id === siteId && <span className={classes.here}>shown now</span>}
              </UnstyledButton>
            </li>
          ))}
        </ul>
      )}
    </FrameDrop>
  )
}
