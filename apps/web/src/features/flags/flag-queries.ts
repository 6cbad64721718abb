import { countFlags, listFlags, type FlagKind } from '@shaftbook/contract/flags'
import { areas } from '@shaftbook/contract/register-tables'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

export type FlagState = 'open' | 'put-off' | 'cleared'

export interface FlagFilter {
  state: FlagState
  kind?: FlagKind | undefined
  areaId?: string | undefined
  search?: string | undefined
}

export const flagQueries = {
  list: (site: string, filter: FlagFilter) =>
    infiniteQueryOptions({
      queryKey: ['flags', site, 'list', filter],
      queryFn: ({ pageParam, signal }) =>
        call(listFlags, { params: { site }, query: { ...filter, cursor: pageParam } }, signal),
      initialPageParam: undefined as string | undefined,
      getNextPageParam: nextCursor,
    }),
  counts: (site: string) =>
    queryOptions({
      queryKey: ['flags', site, 'counts'],
      queryFn: ({ signal }) => call(countFlags, { params: { site } }, signal),
    }),
  areas: (site: string) =>
    queryOptions({
      queryKey: ['flags', site, 'areas'],
      queryFn: ({ signal }) => call(areas.list, { params: { site }, query: { limit: 200 } }, signal),
      staleTime: 300_000,
    }),
}
