import { readLifeSummary } from '@shaftbook/contract/life'
import { listRemovals, type EndKind } from '@shaftbook/contract/removals'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

export interface RemovalFilter {
  endKind?: EndKind | undefined
  /** A clause of ISO 15243; takes in the modes below it. */
  modeClause?: string | undefined
}

export const lifeQueries = {
  summary: (site: string) =>
    queryOptions({
      queryKey: ['life', site, 'summary'],
      queryFn: ({ signal }) => call(readLifeSummary, { params: { site } }, signal),
    }),
  removals: (site: string, filter: RemovalFilter) =>
    infiniteQueryOptions({
      queryKey: ['life', site, 'removals', filter],
      queryFn: ({ pageParam, signal }) =>
        call(listRemovals, { params: { site }, query: { ...filter, cursor: pageParam } }, signal),
      initialPageParam: undefined as string | undefined,
      getNextPageParam: nextCursor,
    }),
}
