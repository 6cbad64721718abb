import { guns } from '@shaftbook/contract/guns'
import { areas, greases } from '@shaftbook/contract/register-tables'
import { listRoundWalks, readRoundWalk } from '@shaftbook/contract/round-walks'
import { listRounds, proposeStops, readRound } from '@shaftbook/contract/rounds'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

export interface StopChoice {
  areaIds: readonly string[]
  greaseIds: readonly string[]
  search: string
  dueOnly: boolean
}

export const roundQueries = {
  list: (site: string) =>
    infiniteQueryOptions({
      queryKey: ['rounds', site, 'list'],
      queryFn: ({ pageParam, signal }) =>
        call(listRounds, { params: { site }, query: { ...(pageParam && { cursor: pageParam }) } }, signal),
      initialPageParam: undefined as string | undefined,
      getNextPageParam: nextCursor,
    }),
  round: (site: string, id: string) =>
    queryOptions({
      queryKey: ['rounds', site, 'round', id],
      queryFn: ({ signal }) => call(readRound, { params: { site, id } }, signal),
    }),
  proposals: (site: string, { areaIds, greaseIds, search, dueOnly }: StopChoice) =>
    queryOptions({
      queryKey: ['rounds', site, 'proposals', areaIds, greaseIds, search, dueOnly],
      queryFn: ({ signal }) => {
        const query = {
          ...(areaIds.length > 0 && { areaIds: areaIds.join(',') }),
          ...(greaseIds.length > 0 && { greaseIds: greaseIds.join(',') }),
          ...(search && { search }),
          ...(dueOnly && { dueOnly: 'true' as const }),
        }
        return call(proposeStops, { params: { site }, query }, signal)
      },
    }),
  walks: (site: string, roundId: string) =>
    queryOptions({
      queryKey: ['rounds', site, 'walks', roundId],
      queryFn: ({ signal }) => call(listRoundWalks, { params: { site }, query: { roundId, limit: 10 } }, signal),
    }),
  walk: (site: string, id: string) =>
    queryOptions({
      queryKey: ['rounds', site, 'walk', id],
      queryFn: ({ signal }) => call(readRoundWalk, { params: { site, id } }, signal),
    }),
  guns: (site: string) =>
    queryOptions({
      queryKey: ['rounds', site, 'guns'],
      queryFn: ({ signal }) => call(guns.list, { params: { site }, query: { limit: 200 } }, signal),
    }),
  areas: (site: string) =>
    queryOptions({
      queryKey: ['rounds', site, 'areas'],
      queryFn: ({ signal }) => call(areas.list, { params: { site }, query: { limit: 200 } }, signal),
      staleTime: 300_000,
    }),
  greases: (site: string) =>
    queryOptions({
      queryKey: ['rounds', site, 'greases'],
      queryFn: ({ signal }) => call(greases.list, { params: { site }, query: { limit: 200 } }, signal),
      staleTime: 300_000,
    }),
}
