import { listPositionBoard, readPositionOverview } from '@shaftbook/contract/position-views'
import { areas, machines } from '@shaftbook/contract/register-tables'
import { queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'

export interface LabelFilter {
  search?: string | undefined
  areaId?: string | undefined
  machineId?: string | undefined
}

export const labelsQueries = {
  areas: (site: string) =>
    queryOptions({
      queryKey: ['labels', site, 'areas'],
      queryFn: ({ signal }) => call(areas.list, { params: { site }, query: { limit: 200 } }, signal),
    }),
  machines: (site: string, areaId: string | undefined) =>
    queryOptions({
      queryKey: ['labels', site, 'machines', areaId],
      queryFn: ({ signal }) => call(machines.list, { params: { site }, query: { areaId, limit: 200 } }, signal),
    }),
  /** Up to 100 positions of the choice, by tag. */
  positions: (site: string, filter: LabelFilter) =>
    queryOptions({
      queryKey: ['labels', site, 'positions', filter],
      queryFn: ({ signal }) => call(listPositionBoard, { params: { site }, query: { ...filter, limit: 100 } }, signal),
    }),
  position: (site: string, id: string) =>
    queryOptions({
      queryKey: ['labels', site, 'position', id],
      queryFn: ({ signal }) => call(readPositionOverview, { params: { site, id } }, signal),
    }),
}
