import type { ReactNode } from 'react'
import classes from './position-tree.module.css'

interface FoldProps {
  isOpen: boolean
  /** Id of what is opened. */
  controls: string
  onToggle: () => void
  children: ReactNode
}

/** A line of the tree that opens what lies below it. */
export function Fold({ isOpen, controls, onToggle, children }: FoldProps) {
  return (
    <button type="button" className={classes.fold} aria-expanded={isOpen} aria-controls={controls} onClick={onToggle}>
      <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true" data-open={isOpen || undefined}>
        <path d="M4 2l4.5 4L4 10" />
      </svg>
      {children}
    </button>
  )
}
