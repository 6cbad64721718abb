import { useMediaQuery } from '@mantine/hooks'
import type { ReactNode } from 'react'
import { Dialog } from '../../ui/over-page.tsx'
import classes from './greasing-dialog.module.css'

interface GreasingDialogProps {
  title: string
  onClose: () => void
  /** Something is typed: a click beside the dialog does not throw it away. */
  typed?: boolean
  wide?: boolean
  children: ReactNode
}

/** A sheet of the greasing page: the whole screen on a phone. */
export function GreasingDialog({ title, onClose, typed = false, wide = false, children }: GreasingDialogProps) {
  const phone = useMediaQuery('(max-width: 699px)', undefined, { getInitialValueInEffect: false })
  return (
    <Dialog
      opened
      onClose={onClose}
      title={title}
      size={wide ? 720 : 560}
      fullScreen={phone}
      closeOnClickOutside={!typed}
      closeButtonProps={{ 'aria-label': 'Close' }}
      transitionProps={{ duration: 0 }}
    >
      <div className={classes.body}>{children}</div>
    </Dialog>
  )
}
