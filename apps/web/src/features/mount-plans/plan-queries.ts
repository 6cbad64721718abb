import { listMountPlans, readMountPlan } from '@shaftbook/contract/mount-plans'
import { readPositionOverview } from '@shaftbook/contract/position-views'
import { bearingTypes } from '@shaftbook/contract/register-tables'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

export interface PlanFilters {
  positionId?: string | undefined
  areaId?: string | undefined
  state?: 'open' | 'done' | 'dropped' | undefined
}

export const planQueries = {
  list: (site: string, filters: PlanFilters) =>
    infiniteQueryOptions({
      queryKey: ['mount-plans', site, 'list', filters],
      queryFn: ({ pageParam, signal }) =>
        call(
          listMountPlans,
          { params: { site }, query: { ...filters, ...(pageParam && { cursor: pageParam }) } },
          signal,
        ),
      initialPageParam: undefined as string | undefined,
      getNextPageParam: nextCursor,
    }),
  plan: (site: string, id: string) =>
    queryOptions({
      queryKey: ['mount-plans', site, id],
      queryFn: ({ signal }) => call(readMountPlan, { params: { site, id } }, signal),
    }),
  place: (site: string, positionId: string) =>
    queryOptions({
      queryKey: ['mount-plans', site, 'place', positionId],
      queryFn: ({ signal }) => call(readPositionOverview, { params: { site, id: positionId } }, signal),
    }),
  /** The bearing types that may go on where this one is planned: the same code and taper, any clearance class. */
  typesLike: (site: string, like: { id: string; basicCode: string; taper: string | null }) =>
    queryOptions({
      queryKey: ['mount-plans', site, 'types-like', like.id],
      queryFn: async ({ signal }) => {
        const query = { search: like.basicCode, limit: 200 }
        const { items } = await call(bearingTypes.list, { params: { site }, query }, signal)
        return items.filter(
          ({ id, basicCode, taper }) => id !== like.id && basicCode === like.basicCode && taper === like.taper,
        )
      },
      staleTime: 300_000,
    }),
}
