import { listKits, listPartUses, readKit, type KitSummary } from '@shaftbook/contract/kits'
import { listPositionBoard, readPositionOverview, type PositionListItem } from '@shaftbook/contract/position-views'
import { parts, positions, type PartKind } from '@shaftbook/contract/register-tables'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import type { z } from 'zod'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

export type PartSort = 'number' | '-number' | 'designation' | '-designation' | 'bin' | '-bin'

export interface PartFilter {
  kind?: z.output<typeof PartKind> | undefined
  search?: string | undefined
  sort?: PartSort | undefined
}

interface Found<Row> {
  items: Row[]
  nextCursor: string | null
}
export type Part = z.output<typeof parts.Row>
export type KitItem = z.output<typeof KitSummary>
export interface Hits {
  positions: Found<PositionListItem>
  parts: Found<Part>
  kits: Found<KitItem>
}

const firstPage = undefined as string | undefined
/** So many hits of a kind are shown; a longer list is a worse answer than a better word. */
export const hitsShown = 12

export const storesQueries = {
  /** Positions, parts and kits that a search finds, the first of each. */
  hits: (site: string, search: string) =>
    queryOptions({
      queryKey: ['stores', site, 'hits', search],
      queryFn: async ({ signal }): Promise<Hits> => {
        const input = { params: { site }, query: { search, limit: hitsShown } }
        const [foundPositions, foundParts, foundKits] = await Promise.all([
          call(listPositionBoard, input, signal),
          call(parts.list, input, signal),
          call(listKits, input, signal),
        ])
        return { positions: foundPositions, parts: foundParts, kits: foundKits }
      },
    }),
  parts: (site: string, filter: PartFilter) =>
    infiniteQueryOptions({
      queryKey: ['stores', site, 'parts', filter],
      queryFn: ({ pageParam, signal }) =>
        call(parts.list, { params: { site }, query: { ...filter, cursor: pageParam } }, signal),
      initialPageParam: firstPage,
      getNextPageParam: nextCursor,
    }),
  part: (site: string, id: string) =>
    queryOptions({
      queryKey: ['stores', site, 'part', id],
      queryFn: ({ signal }) => call(parts.read, { params: { site, id } }, signal),
    }),
  uses: (site: string, partId: string) =>
    infiniteQueryOptions({
      queryKey: ['stores', site, 'uses', partId],
      queryFn: ({ pageParam, signal }) =>
        call(listPartUses, { params: { site, id: partId }, query: { cursor: pageParam } }, signal),
      initialPageParam: firstPage,
      getNextPageParam: nextCursor,
    }),
  kits: (site: string, search: string | undefined) =>
    infiniteQueryOptions({
      queryKey: ['stores', site, 'kits', search],
      queryFn: ({ pageParam, signal }) =>
        call(listKits, { params: { site }, query: { search, cursor: pageParam } }, signal),
      initialPageParam: firstPage,
      getNextPageParam: nextCursor,
    }),
  kit: (site: string, id: string) =>
    queryOptions({
      queryKey: ['stores', site, 'kit', id],
      queryFn: ({ signal }) => call(readKit, { params: { site, id } }, signal),
    }),
  kitPositions: (site: string, kitId: string) =>
    infiniteQueryOptions({
      queryKey: ['stores', site, 'kit-positions', kitId],
      queryFn: ({ pageParam, signal }) =>
        call(positions.list, { params: { site }, query: { kitId, cursor: pageParam } }, signal),
      initialPageParam: firstPage,
      getNextPageParam: nextCursor,
    }),
  place: (site: string, positionId: string) =>
    queryOptions({
      queryKey: ['stores', site, 'place', positionId],
      queryFn: ({ signal }) => call(readPositionOverview, { params: { site, id: positionId } }, signal),
    }),
}
