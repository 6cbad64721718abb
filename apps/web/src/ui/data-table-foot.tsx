import { Button } from '@mantine/core'
import type { TableMore } from './data-table-types.ts'
import classes from './data-table.module.css'

/** How many rows are shown, and the way to more. */
export function TableFoot({ more, shown }: { more: TableMore | undefined; shown: number }) {
  if (!more) return null
  return (
    <div className={classes.foot}>
      <p aria-live="polite">
        {shown.toLocaleString('en-GB')}
        {more.total !== undefined && ` of ${more.total.toLocaleString('en-GB')}`} shown
      </p>
      {more.hasMore && (
        <Button variant="default" onClick={more.onMore} loading={more.loading}>
          Load more
        </Button>
      )}
    </div>
  )
}
