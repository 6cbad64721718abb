import type { InfiniteData } from '@tanstack/react-query'
import type { TableMore } from '../ui/data-table-types.ts'

interface Page<Row> {
  items: Row[]
  nextCursor: string | null
}

interface ListQuery<Row> {
  data: InfiniteData<Page<Row>> | undefined
  hasNextPage: boolean
  isFetchingNextPage: boolean
  fetchNextPage: () => unknown
}

/** The cursor of the page after this one, for `getNextPageParam`. */
export function nextCursor(page: { nextCursor: string | null }): string | undefined {
  return page.nextCursor ?? undefined
}

/** The rows loaded so far, and what a table's foot needs to load more. */
export function listed<Row>(query: ListQuery<Row>): { rows: Row[]; more: TableMore } {
  return {
    rows: query.data?.pages.flatMap((page) => page.items) ?? [],
    more: { hasMore: query.hasNextPage, loading: query.isFetchingNextPage, onMore: () => void query.fetchNextPage() },
  }
}
