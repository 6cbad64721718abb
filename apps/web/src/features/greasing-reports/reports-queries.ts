import { listPeople } from '@shaftbook/contract/access'
import {
  readGreasingCompliance,
  readGreasingForecast,
  type ComplianceGrouping,
} from '@shaftbook/contract/greasing-reports'
import { areas } from '@shaftbook/contract/register-tables'
import { listRounds } from '@shaftbook/contract/rounds'
import { queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'

export interface ComplianceQuestion {
  from: string
  by: ComplianceGrouping
  areaId?: string | undefined
  positionId?: string | undefined
  personId?: string | undefined
  roundId?: string | undefined
}

export const reportQueries = {
  forecast: (site: string, weeks: 4 | 8 | 13, areaId: string | undefined) =>
    queryOptions({
      queryKey: ['greasing-reports', site, 'forecast', weeks, areaId],
      queryFn: ({ signal }) => call(readGreasingForecast, { params: { site }, query: { weeks, areaId } }, signal),
    }),
  compliance: (site: string, question: ComplianceQuestion) =>
    queryOptions({
      queryKey: ['greasing-reports', site, 'compliance', question],
      queryFn: ({ signal }) => call(readGreasingCompliance, { params: { site }, query: { ...question } }, signal),
    }),
  areas: (site: string) =>
    queryOptions({
      queryKey: ['greasing-reports', site, 'areas'],
      queryFn: ({ signal }) => call(areas.list, { params: { site }, query: { limit: 200 } }, signal),
      staleTime: 300_000,
    }),
  rounds: (site: string) =>
    queryOptions({
      queryKey: ['greasing-reports', site, 'rounds'],
      queryFn: ({ signal }) => call(listRounds, { params: { site }, query: { limit: 200 } }, signal),
      staleTime: 300_000,
    }),
  people: (site: string) =>
    queryOptions({
      queryKey: ['greasing-reports', site, 'people'],
      queryFn: ({ signal }) => call(listPeople, { params: { site }, query: { limit: 200 } }, signal),
      staleTime: 300_000,
    }),
}
