import { UnstyledButton } from '@mantine/core'
import { useId, useRef, useState, type ReactNode, type ToggleEvent } from 'react'
import classes from './frame-menu.module.css'

const gap = 8

interface FrameDropProps {
  /** Names what drops down. */
  label: string
  /** What a screen reader hears instead of the button's content. */
  buttonLabel?: string
  /** What stands on the button. */
  button: ReactNode
  /** The edge of the button that it keeps to. */
  edge: 'start' | 'end'
  width: number
  /** Gets the id of the panel: a button in it that names it as `popoverTarget` closes it. */
  children: (panelId: string) => ReactNode
}

/** A button of the frame with a small panel below it, opened by the browser itself: Escape and a press elsewhere close it. */
export function FrameDrop({ label, buttonLabel, button, edge, width, children }: FrameDropProps) {
  const id = useId()
  const trigger = useRef<HTMLButtonElement>(null)
  const panel = useRef<HTMLDialogElement>(null)
  const [opened, setOpened] = useState(false)

  const place = ({ newState }: ToggleEvent): void => {
    setOpened(newState === 'open')
    if (newState === 'open' && trigger.current && panel.current) {
      Object.assign(panel.current.style, placeBeside(trigger.current.getBoundingClientRect(), edge, width))
    }
  }
  return (
    <>
      <UnstyledButton
        ref={trigger}
        className={classes.trigger}
        aria-label={buttonLabel}
        aria-haspopup="dialog"
        aria-expanded={opened}
        popoverTarget={id}
      >
        {button}
      </UnstyledButton>
      <dialog
        ref={panel}
        id={id}
        popover="auto"
        aria-label={label}
        tabIndex={-1}
        className={classes.drop}
        style={{ width }}
        onBeforeToggle={place}
        onToggle={({ newState }) => newState === 'open' && panel.current?.focus()}
      >
        {opened && children(id)}
      </dialog>
    </>
  )
}

/** Below the button, or above it where it stands in the lower half of the screen; never beyond the sides. */
function placeBeside({ left, right, top, bottom }: DOMRect, edge: 'start' | 'end', width: number) {
  const { clientWidth, clientHeight } = document.documentElement
  const wished = edge === 'start' ? left : right - width
  const across = { left: `${Math.max(gap, Math.min(wished, clientWidth - width - gap))}px` }
  return top + bottom < clientHeight
    ? { ...across, top: `${bottom + gap}px`, bottom: 'auto' }
    : { ...across, top: 'auto', bottom: `${clientHeight - top + gap}px` }
}
