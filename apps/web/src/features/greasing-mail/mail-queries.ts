import { listCalendarFeeds, readMailDigest } from '@shaftbook/contract/greasing-mail'
import { areas } from '@shaftbook/contract/register-tables'
import { listRounds } from '@shaftbook/contract/rounds'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

export const mailQueries = {
  feeds: (site: string) =>
    infiniteQueryOptions({
      queryKey: ['greasing-mail', site, 'feeds'],
      queryFn: ({ pageParam, signal }) =>
        call(listCalendarFeeds, { params: { site }, query: { cursor: pageParam } }, signal),
      initialPageParam: undefined as string | undefined,
      getNextPageParam: nextCursor,
    }),
  digest: (site: string) =>
    queryOptions({
      queryKey: ['greasing-mail', site, 'digest'],
      queryFn: ({ signal }) => call(readMailDigest, { params: { site } }, signal),
    }),
  areas: (site: string) =>
    queryOptions({
      queryKey: ['greasing-mail', site, 'areas'],
      queryFn: ({ signal }) => call(areas.list, { params: { site }, query: { limit: 200 } }, signal),
      staleTime: 300_000,
    }),
  rounds: (site: string) =>
    queryOptions({
      queryKey: ['greasing-mail', site, 'rounds'],
      queryFn: ({ signal }) => call(listRounds, { params: { site }, query: { limit: 200 } }, signal),
      staleTime: 300_000,
    }),
}

export interface NamedPlace {
  readonly id: string
  readonly name: string
}
