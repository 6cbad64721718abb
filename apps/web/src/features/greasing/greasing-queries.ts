import { listGreasePlans, listPlanReviews, type GreaseTask } from '@shaftbook/contract/grease-plans'
import { listDue, listGreasings, type DueState, type WindowResult } from '@shaftbook/contract/greasing'
import { readPositionOverview } from '@shaftbook/contract/position-views'
import { areas, greases } from '@shaftbook/contract/register-tables'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

export interface DueFilters {
  areaId?: string | undefined
  state?: DueState | undefined
  task?: GreaseTask | undefined
  search?: string | undefined
}

const firstPage = undefined as string | undefined

/** What is due, the longest due first. */
export const dueQuery = (site: string, filters: DueFilters) =>
  infiniteQueryOptions({
    queryKey: ['greasing', site, 'due', filters],
    queryFn: ({ pageParam, signal }) =>
      call(listDue, { params: { site }, query: { ...filters, ...(pageParam && { cursor: pageParam }) } }, signal),
    initialPageParam: firstPage,
    getNextPageParam: nextCursor,
  })

/** What was greased, newest first. */
export const greasingsQuery = (site: string, windowResult: WindowResult | undefined) =>
  infiniteQueryOptions({
    queryKey: ['greasing', site, 'done', windowResult],
    queryFn: ({ pageParam, signal }) =>
      call(
        listGreasings,
        { params: { site }, query: { windowResult, ...(pageParam && { cursor: pageParam }) } },
        signal,
      ),
    initialPageParam: firstPage,
    getNextPageParam: nextCursor,
  })

/** A position with its plan, its meter and its bearing. */
export const placeQuery = (site: string, positionId: string) =>
  queryOptions({
    queryKey: ['greasing', site, 'place', positionId],
    queryFn: ({ signal }) => call(readPositionOverview, { params: { site, id: positionId } }, signal),
  })

/** The plans that a position had, newest first. */
export const plansQuery = (site: string, positionId: string) =>
  queryOptions({
    queryKey: ['greasing', site, 'plans', positionId],
    queryFn: ({ signal }) => call(listGreasePlans, { params: { site }, query: { positionId, limit: 20 } }, signal),
  })

/** Which bearings are sealed for life, with the plan that says so. */
export const sealedQuery = (site: string) =>
  infiniteQueryOptions({
    queryKey: ['greasing', site, 'sealed'],
    queryFn: ({ pageParam, signal }) => {
      const query = { way: 'sealed', current: 'true', ...(pageParam && { cursor: pageParam }) } as const
      return call(listGreasePlans, { params: { site }, query }, signal)
    },
    initialPageParam: firstPage,
    getNextPageParam: nextCursor,
  })

/** Why a plan was kept though its duty changed or its day of review came, newest first. */
export const reviewsQuery = (site: string, planId: string) =>
  queryOptions({
    queryKey: ['greasing', site, 'reviews', planId],
    queryFn: ({ signal }) => call(listPlanReviews, { params: { site }, query: { planId, limit: 5 } }, signal),
  })

export const areasQuery = (site: string) =>
  queryOptions({
    queryKey: ['greasing', site, 'areas'],
    queryFn: ({ signal }) => call(areas.list, { params: { site }, query: { limit: 200 } }, signal),
    staleTime: 300_000,
  })

export const greasesQuery = (site: string) =>
  queryOptions({
    queryKey: ['greasing', site, 'greases'],
    queryFn: ({ signal }) => call(greases.list, { params: { site }, query: { limit: 200 } }, signal),
    staleTime: 300_000,
  })
