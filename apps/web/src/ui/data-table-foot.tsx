import { Button } from '@mantine/core'
import { formatCount } from '../lib/format-count.ts'
import type { TableMore } from './data-table-types.ts'
import classes from './data-table.module.css'

/** How many rows are shown, and the way to more. */
export function TableFoot({ more, shown }: { more: TableMore | undefined; shown: number }) {
  if (!more) return null
  return (
    <div className={classes.foot}>
      <p aria-live="polite">
        {formatCount(shown)}
        {more.total !== undefined && ` of ${formatCount(more.total)}`} shown
      </p>
      {more.hasMore && (
        <Button variant="default" onClick={more.onMore} loading={more.loading}>
          Load more
        </Button>
      )}
    </div>
  )
}
