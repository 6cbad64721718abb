import { Popover, UnstyledButton } from '@mantine/core'
import { useDisclosure } from '@mantine/hooks'
import { Chevron } from './destinations.tsx'
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
  const [opened, { toggle, close }] = useDisclosure(false)
  const current = sites.find(({ id }) => id === siteId)
  if (sites.length < 2) return <p className={classes.single}>{current?.name}</p>
  return (
    <Popover position="bottom-start" width={240} shadow="md" trapFocus returnFocus opened={opened} onDismiss={close}>
      <Popover.Target>
        <UnstyledButton
          className={classes.trigger}
          onClick={toggle}
          aria-label={`Site: ${current?.name ?? 'none'}. Change site`}
        >
          <span className={classes.triggerText}>{current?.name ?? 'Choose a site'}</span>
          <Chevron />
        </UnstyledButton>
      </Popover.Target>
      <Popover.Dropdown aria-label="Change site">
        <ul className={classes.sites}>
          {sites.map((site) => (
            <li key={site.id}>
              <UnstyledButton
                className={classes.site}
                aria-current={site.id === siteId}
                onClick={() => {
                  close()
                  onSite(site.id)
                }}
              >
                {site.name}
                {site.id === siteId && <span className={classes.here}>shown now</span>}
              </UnstyledButton>
            </li>
          ))}
        </ul>
      </Popover.Dropdown>
    </Popover>
  )
}
