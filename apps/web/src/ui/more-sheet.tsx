import { destinations, type DestinationKey } from './destinations.tsx'
import { AppLink } from './link.tsx'
import { BottomSheet } from './over-page.tsx'
import classes from './frame-menu.module.css'

interface MoreSheetProps {
  hrefs: Record<DestinationKey, string>
  active: DestinationKey | null
  opened: boolean
  onClose: () => void
}

/** The places that do not fit a phone's bottom bar. */
export function MoreSheet({ hrefs, active, opened, onClose }: MoreSheetProps) {
  return (
    <BottomSheet opened={opened} onClose={onClose} title="More">
      <nav aria-label="More places">
        <ul className={classes.morePlaces}>
          {destinations.slice(4).map(({ key, label, glyph }) => (
            <li key={key}>
              <AppLink
                href={hrefs[key]}
                className={classes.morePlace}
                onClick={onClose}
                aria-current={active === key ? 'page' : undefined}
              >
                {glyph}
                {label}
              </AppLink>
            </li>
          ))}
        </ul>
      </nav>
    </BottomSheet>
  )
}
