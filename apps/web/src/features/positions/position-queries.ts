import type { Verdict } from '@shaftbook/contract/judgement'
import { readMount } from '@shaftbook/contract/mounts'
import type { DueState } from '@shaftbook/contract/greasing'
import {
  listPositionBoard,
  listTreeAreas,
  listTreeMachines,
  readPositionHistory,
  readPositionOverview,
} from '@shaftbook/contract/position-views'
import { areas, machines } from '@shaftbook/contract/register-tables'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

export type BoardSort = 'tag' | '-tag' | 'dueOn' | '-dueOn'

/** What the list of positions can be narrowed by; it stands in the address. */
export interface BoardFilter {
  search?: string | undefined
  areaId?: string | undefined
  machineId?: string | undefined
  verdict?: Verdict | undefined
  dueState?: DueState | undefined
  sort?: BoardSort | undefined
}

export const positionQueries = {
  board: (site: string, filter: BoardFilter) =>
    infiniteQueryOptions({
      queryKey: ['positions', site, 'board', filter],
      queryFn: ({ pageParam, signal }) =>
        call(listPositionBoard, { params: { site }, query: { ...filter, cursor: pageParam } }, signal),
      initialPageParam: undefined as string | undefined,
      getNextPageParam: nextCursor,
    }),
  /** Every position of one machine. */
  machineBoard: (site: string, machineId: string) =>
    queryOptions({
      queryKey: ['positions', site, 'machine-board', machineId],
      queryFn: ({ signal }) => call(listPositionBoard, { params: { site }, query: { machineId, limit: 200 } }, signal),
    }),
  areas: (site: string) =>
    queryOptions({
      queryKey: ['positions', site, 'areas'],
      queryFn: ({ signal }) => call(areas.list, { params: { site }, query: { limit: 200 } }, signal),
      staleTime: 300_000,
    }),
  machine: (site: string, id: string) =>
    queryOptions({
      queryKey: ['positions', site, 'machine', id],
      queryFn: ({ signal }) => call(machines.read, { params: { site, id } }, signal),
    }),
  treeAreas: (site: string) =>
    queryOptions({
      queryKey: ['positions', site, 'tree'],
      queryFn: ({ signal }) => call(listTreeAreas, { params: { site } }, signal),
    }),
  treeMachines: (site: string, areaId: string) =>
    infiniteQueryOptions({
      queryKey: ['positions', site, 'tree', areaId],
      queryFn: ({ pageParam, signal }) =>
        call(listTreeMachines, { params: { site, id: areaId }, query: { cursor: pageParam } }, signal),
      initialPageParam: undefined as string | undefined,
      getNextPageParam: nextCursor,
    }),
  overview: (site: string, id: string) =>
    queryOptions({
      queryKey: ['positions', site, 'overview', id],
      queryFn: ({ signal }) => call(readPositionOverview, { params: { site, id } }, signal),
    }),
  history: (site: string, id: string) =>
    queryOptions({
      queryKey: ['positions', site, 'history', id],
      queryFn: ({ signal }) => call(readPositionHistory, { params: { site, id } }, signal),
    }),
  /** The mount record of what is fitted, for the numbers behind its verdict. */
  mount: (site: string, id: string | null) =>
    queryOptions({
      queryKey: ['positions', site, 'mount', id],
      queryFn: ({ signal }) => (id === null ? null : call(readMount, { params: { site, id } }, signal)),
    }),
}
