import type { ReactNode } from 'react'
import classes from './definition-list.module.css'

export interface Definition {
  label: string
  /** Absent values are shown as "not known", never left blank. */
  value: ReactNode
  /** Symbol of the unit, when the value is a bare number. */
  unit?: string
  /** A remark under the value: its source, its age. */
  note?: ReactNode
}

interface DefinitionListProps {
  items: readonly Definition[]
  /** One under the other, in two columns where there is room, or side by side as in a title block. */
  layout?: 'list' | 'columns' | 'row'
}

/** Facts as label and value. */
export function DefinitionList({ items, layout = 'list' }: DefinitionListProps) {
  return (
    <dl className={classes.list} data-layout={layout}>
      {items.map(({ label, value, unit, note }) => (
        <div key={label} className={classes.pair}>
          <dt>{label}</dt>
          <dd>
            {value === null || value === undefined || value === '' ? (
              <span className={classes.unknown}>not known</span>
            ) : (
              <>
                {value}
                {unit && <span className={classes.unit}> {unit}</span>}
              </>
            )}
            {note && <span className={classes.note}>{note}</span>}
          </dd>
        </div>
      ))}
    </dl>
  )
}
