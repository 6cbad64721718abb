import { listAudit, listPeople, readSite } from '@shaftbook/contract/access'
import { listMakerCharts, readChartTakeover, readMakerChart } from '@shaftbook/contract/maker-charts'
import { listMeterBoard } from '@shaftbook/contract/meter-board'
import { listMeterReadings } from '@shaftbook/contract/meter-readings'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

const pages = { initialPageParam: undefined as string | undefined, getNextPageParam: nextCursor }

export const setupQueries = {
  site: (site: string) =>
    queryOptions({
      queryKey: ['setup', site, 'site'],
      queryFn: ({ signal }) => call(readSite, { params: { site } }, signal),
    }),
  people: (site: string) =>
    infiniteQueryOptions({
      queryKey: ['setup', site, 'people'],
      queryFn: ({ pageParam, signal }) => call(listPeople, { params: { site }, query: { cursor: pageParam } }, signal),
      ...pages,
    }),
  charts: (site: string) =>
    infiniteQueryOptions({
      queryKey: ['setup', site, 'charts'],
      queryFn: ({ pageParam, signal }) =>
        call(listMakerCharts, { params: { site }, query: { cursor: pageParam } }, signal),
      ...pages,
    }),
  chart: (site: string, id: string) =>
    queryOptions({
      queryKey: ['setup', site, 'charts', id],
      queryFn: ({ signal }) => call(readMakerChart, { params: { site, id } }, signal),
    }),
  takeover: (site: string, chartId: string) =>
    queryOptions({
      queryKey: ['setup', site, 'charts', chartId, 'takeover'],
      queryFn: ({ signal }) => call(readChartTakeover, { params: { site, id: chartId } }, signal),
    }),
  meterBoard: (site: string, search: string | undefined) =>
    infiniteQueryOptions({
      queryKey: ['setup', site, 'meter-board', search],
      queryFn: ({ pageParam, signal }) =>
        call(listMeterBoard, { params: { site }, query: { search, limit: 200, cursor: pageParam } }, signal),
      ...pages,
    }),
  readings: (site: string, meterId: string) =>
    infiniteQueryOptions({
      queryKey: ['setup', site, 'readings', meterId],
      queryFn: ({ pageParam, signal }) =>
        call(listMeterReadings, { params: { site }, query: { meterId, cursor: pageParam } }, signal),
      ...pages,
    }),
  audit: (site: string, filter: { table?: string | undefined; rowId?: string | undefined }) =>
    infiniteQueryOptions({
      queryKey: ['setup', site, 'audit', filter],
      queryFn: ({ pageParam, signal }) =>
        call(listAudit, { params: { site }, query: { ...filter, cursor: pageParam } }, signal),
      ...pages,
    }),
}
