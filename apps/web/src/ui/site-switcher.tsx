import { Menu, UnstyledButton } from '@mantine/core'
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

/** The site shown now; a menu when the person belongs to several. */
export function SiteSwitcher({ sites, siteId, onSite }: SiteSwitcherProps) {
  const current = sites.find(({ id }) => id === siteId)
  if (sites.length < 2) return <p className={classes.single}>{current?.name}</p>
  return (
    <Menu position="bottom-start" width={240}>
      <Menu.Target>
        <UnstyledButton className={classes.trigger} aria-label={`Site: ${current?.name ?? 'none'}. Change site`}>
          <span className={classes.triggerText}>{current?.name ?? 'Choose a site'}</span>
          <Chevron />
        </UnstyledButton>
      </Menu.Target>
      <Menu.Dropdown>
        <Menu.Label>Site</Menu.Label>
        {sites.map((site) => (
          <Menu.Item
            key={site.id}
            role="menuitemradio"
            aria-checked={site.id === siteId}
            onClick={() => onSite(site.id)}
            rightSection={site.id === siteId ? <span aria-hidden="true">✓</span> : null}
          >
            {site.name}
          </Menu.Item>
        ))}
      </Menu.Dropdown>
    </Menu>
  )
}

export function Chevron() {
  return (
    <svg viewBox="0 0 12 12" width="12" height="12" fill="none" stroke="currentColor" aria-hidden="true">
      <path d="M2.5 4.5 6 8l3.5-3.5" strokeWidth="1.5" strokeLinecap="round" />
    </svg>
  )
}
