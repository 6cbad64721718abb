import { Button } from '@mantine/core'
import { lazy, Suspense } from 'react'
import { Chevron } from './destinations.tsx'
import { FrameDrop } from './frame-drop.tsx'
import classes from './frame-menu.module.css'

const Preferences = lazy(async () => ({ default: (await import('./preferences.tsx')).Preferences }))

export interface FramePerson {
  name: string
  /** Role in words, such as "Technician". */
  role: string
}

function initials(name: string): string {
  const parts = name.trim().split(/\s+/)
  return ((parts[0]?.[0] ?? '') + (parts.length > 1 ? (parts.at(-1)?.[0] ?? '') : '')).toUpperCase()
}

/** Who is signed in, with this person's theme, unit and the way out. */
export function PersonMenu({ person, onSignOut }: { person: FramePerson; onSignOut: () => void }) {
  return (
    <FrameDrop
      label="Theme, unit and sign-out"
      button={
        <>
          <span className="visually-hidden">
            {person.name}, {person.role}. Theme, unit and sign-out
          </span>
          <span className={classes.initials} aria-hidden="true">
            {initials(person.name)}
          </span>
          <span className={classes.personText} aria-hidden="true">
            <span className={classes.personName}>{person.name}</span>
            <span className={classes.personRole}>{person.role}</span>
          </span>
          <Chevron />
        </>
      }
      edge="end"
      width={264}
    >
      {(panelId) => (
        <>
          <p className={classes.who}>
            {person.name} <span className={classes.personRole}>{person.role}</span>
          </p>
          <div className={classes.preferences}>
            <Suspense>
              <Preferences />
            </Suspense>
            <Button variant="default" fullWidth popoverTarget={panelId} popoverTargetAction="hide" onClick={onSignOut}>
              Sign out
            </Button>
          </div>
        </>
      )}
    </FrameDrop>
  )
}
