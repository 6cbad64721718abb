import { readPositionOverview } from '@shaftbook/contract/position-views'
import { listRemovals, readRemoval } from '@shaftbook/contract/removals'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

export const removalQueries = {
  /** Removals that count at a position, newest first. */
  at: (site: string, positionId: string) =>
    infiniteQueryOptions({
      queryKey: ['removals', site, 'at', positionId],
      queryFn: ({ pageParam, signal }) =>
        call(listRemovals, { params: { site }, query: { positionId, cursor: pageParam } }, signal),
      initialPageParam: undefined as string | undefined,
      getNextPageParam: nextCursor,
    }),
  one: (site: string, id: string) =>
    queryOptions({
      queryKey: ['removals', site, id],
      queryFn: ({ signal }) => call(readRemoval, { params: { site, id } }, signal),
    }),
  place: (site: string, positionId: string) =>
    queryOptions({
      queryKey: ['removals', site, 'place', positionId],
      queryFn: ({ signal }) => call(readPositionOverview, { params: { site, id: positionId } }, signal),
    }),
}
