import { useInfiniteQuery } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import type { DataColumn, TableSort } from '../../ui/data-table-types.ts'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { registerQueries, type RegisterName, type RowOf } from './registers.ts'

interface RegisterTableProps<N extends RegisterName> {
  name: N
  caption: string
  filter?: Readonly<Record<string, string | undefined>>
  columns: readonly DataColumn<RowOf<N>>[]
  rowHref?: ((row: RowOf<N>) => string) | undefined
  sort?: TableSort | undefined
  onSort?: (sort: TableSort | undefined) => void
  empty: ReactNode
}

/** The rows of a register table, with loading, failure and emptiness. */
export function RegisterTable<N extends RegisterName>(props: RegisterTableProps<N>) {
  const { name, caption, filter, columns, rowHref, sort, onSort, empty } = props
  const { code } = useSite()
  const query = useInfiniteQuery(registerQueries.list(code, name, filter))
  if (query.isPending) return <LoadingRows what={caption.toLowerCase()} />
  if (query.isError) return <ErrorState problem={shownProblem(query.error)} onRetry={() => void query.refetch()} />
  const { rows, more } = listed(query)
  return (
    <DataTable<RowOf<N>>
      caption={caption}
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      {...(rowHref && { rowHref })}
      {...(onSort && { sort, onSort })}
      more={more}
      empty={empty}
    />
  )
}
