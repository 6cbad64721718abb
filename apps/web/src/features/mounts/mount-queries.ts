import { readSite } from '@shaftbook/contract/access'
import { readMakerChart } from '@shaftbook/contract/maker-charts'
import type { Verdict } from '@shaftbook/contract/judgement'
import { readMountPlan } from '@shaftbook/contract/mount-plans'
import { listMounts, readMount } from '@shaftbook/contract/mounts'
import { readPositionOverview } from '@shaftbook/contract/position-views'
import { areas, bearingTypes, gauges, greases } from '@shaftbook/contract/register-tables'
import { infiniteQueryOptions, queryOptions, type QueryClient } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

/** What the list of mount records can be narrowed by; it stands in the address. */
export interface MountFilters {
  verdict?: Verdict | undefined
  areaId?: string | undefined
  state?: 'draft' | 'signed' | undefined
  search?: string | undefined
}

export const mountsQuery = (site: string, filters: MountFilters) =>
  infiniteQueryOptions({
    queryKey: ['mounts', site, 'list', filters],
    queryFn: ({ pageParam, signal }) => {
      const query = { ...filters, ...(pageParam && { cursor: pageParam }) }
      return call(listMounts, { params: { site }, query }, signal)
    },
    initialPageParam: undefined as string | undefined,
    getNextPageParam: nextCursor,
  })

export const mountQuery = (site: string, id: string) =>
  queryOptions({
    queryKey: ['mounts', site, id],
    queryFn: ({ signal }) => call(readMount, { params: { site, id } }, signal),
  })

/** Drafts of one position that somebody has begun. */
export const draftsQuery = (site: string, positionId: string) =>
  queryOptions({
    queryKey: ['mounts', site, 'drafts', positionId],
    queryFn: ({ signal }) =>
      call(listMounts, { params: { site }, query: { positionId, state: 'draft', limit: 5 } }, signal),
  })

/** The position with its seat, band, kit and what is fitted there now. */
export const placeQuery = (site: string, positionId: string) =>
  queryOptions({
    queryKey: ['mounts', site, 'place', positionId],
    queryFn: ({ signal }) => call(readPositionOverview, { params: { site, id: positionId } }, signal),
  })

export const planQuery = (site: string, id: string | null) =>
  queryOptions({
    queryKey: ['mounts', site, 'plan', id],
    queryFn: ({ signal }) => (id === null ? null : call(readMountPlan, { params: { site, id } }, signal)),
  })

export const chartQuery = (site: string, id: string | null) =>
  queryOptions({
    queryKey: ['mounts', site, 'chart', id],
    queryFn: ({ signal }) => (id === null ? null : call(readMakerChart, { params: { site, id } }, signal)),
    staleTime: 300_000,
  })

export const settingsQuery = (site: string) =>
  queryOptions({
    queryKey: ['mounts', site, 'settings'],
    queryFn: ({ signal }) => call(readSite, { params: { site } }, signal),
    staleTime: 300_000,
  })

export const areasQuery = (site: string) =>
  queryOptions({
    queryKey: ['mounts', site, 'areas'],
    queryFn: ({ signal }) => call(areas.list, { params: { site }, query: { limit: 200 } }, signal),
    staleTime: 300_000,
  })

export const bearingTypesQuery = (site: string) =>
  queryOptions({
    queryKey: ['mounts', site, 'bearing-types'],
    queryFn: ({ signal }) => call(bearingTypes.list, { params: { site }, query: { limit: 200 } }, signal),
    staleTime: 300_000,
  })

export const greasesQuery = (site: string) =>
  queryOptions({
    queryKey: ['mounts', site, 'greases'],
    queryFn: ({ signal }) => call(greases.list, { params: { site }, query: { limit: 200 } }, signal),
    staleTime: 300_000,
  })

export const gaugesQuery = (site: string) =>
  queryOptions({
    queryKey: ['mounts', site, 'gauges'],
    queryFn: ({ signal }) => call(gauges.list, { params: { site }, query: { limit: 200 } }, signal),
    staleTime: 300_000,
  })

/** Asks at once for all that a sheet of a position waits for, before its page is there. */
export function askForSheet(client: QueryClient, site: string, positionId: string): void {
  void client.prefetchQuery(placeQuery(site, positionId))
  void client.prefetchQuery(bearingTypesQuery(site))
  void client.prefetchQuery(settingsQuery(site))
  void client.prefetchQuery(draftsQuery(site, positionId))
}
