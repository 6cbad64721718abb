import { Button } from '@mantine/core'
import { useDisclosure } from '@mantine/hooks'
import { useId, type ReactNode } from 'react'
import classes from './filter-bar.module.css'

export interface ActiveFilter {
  key: string
  /** As a person reads it: "Area: drying house". */
  label: string
  onRemove: () => void
}

interface FilterBarProps {
  /** The search field, always in view. */
  search?: ReactNode
  /** Further fields; behind a button on a phone. */
  children?: ReactNode
  active: readonly ActiveFilter[]
  onClear: () => void
  /** What the filters leave: "12 of 160 positions". */
  result?: string | undefined
}

/** Search and filters of a list, what is set now, and how many rows that leaves. */
export function FilterBar({ search, children, active, onClear, result }: FilterBarProps) {
  const [open, { toggle }] = useDisclosure(false)
  const fieldsId = useId()
  return (
    <search className={classes.bar}>
      <div className={classes.fields}>
        {search && <div className={classes.search}>{search}</div>}
        {children && (
          <>
            <Button
              className={classes.toggle}
              variant="default"
              onClick={toggle}
              aria-expanded={open}
              aria-controls={fieldsId}
            >
              Filter{active.length > 0 ? ` (${active.length})` : ''}
            </Button>
            <div id={fieldsId} className={classes.more} data-open={open || undefined}>
              {children}
            </div>
          </>
        )}
      </div>
      {(active.length > 0 || result) && (
        <div className={classes.set}>
          {result && (
            <p className={classes.result} aria-live="polite">
              {result}
            </p>
          )}
          {active.map(({ key, label, onRemove }) => (
            <button
              key={key}
              type="button"
              className={classes.chip}
              onClick={onRemove}
              aria-label={`Remove filter ${label}`}
            >
              {label}
              <span aria-hidden="true">×</span>
            </button>
          ))}
          {active.length > 1 && (
            <button type="button" className={classes.clear} onClick={onClear}>
              Clear all
            </button>
          )}
        </div>
      )}
    </search>
  )
}
