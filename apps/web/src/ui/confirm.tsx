import { Button } from '@mantine/core'
import type { ReactNode } from 'react'
import { Dialog } from './over-page.tsx'
import classes from './confirm.module.css'

interface ConfirmProps {
  opened: boolean
  /** The question: "Sign this mount record?" */
  title: string
  /** What follows from it. */
  children: ReactNode
  /** The act itself, as a verb: "Sign". */
  confirmLabel: string
  cancelLabel?: string
  /** `grave` for what cannot be undone. */
  tone?: 'plain' | 'grave'
  busy?: boolean
  /** What is still missing before it can be done. */
  blocked?: string | undefined
  onConfirm: () => void
  onCancel: () => void
}

/** Asks before an act that matters. The way back has the focus when the act is grave. */
export function Confirm(props: ConfirmProps) {
  const { opened, title, children, confirmLabel, cancelLabel = 'Go back', tone = 'plain', busy, blocked } = props
  return (
    <Dialog opened={opened} onClose={props.onCancel} title={title} size={480}>
      <div>{children}</div>
      {blocked && <p className={classes.blocked}>{blocked}</p>}
      <div className={classes.acts}>
        <Button variant="default" onClick={props.onCancel} data-autofocus={tone === 'grave' || undefined}>
          {cancelLabel}
        </Button>
        <Button
          color={tone === 'grave' ? 'over' : 'accent'}
          onClick={props.onConfirm}
          loading={busy}
          disabled={blocked !== undefined}
        >
          {confirmLabel}
        </Button>
      </div>
    </Dialog>
  )
}
