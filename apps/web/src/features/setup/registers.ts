import type { Endpoint } from '@shaftbook/contract/endpoint'
import {
  areas,
  bearingTypes,
  gauges,
  greases,
  machines,
  meters,
  positions,
  shafts,
} from '@shaftbook/contract/register-tables'
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query'
import type { z } from 'zod'
import { call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

/** The tables of the register that the setup enters, by the name that stands in their addresses. */
export const registers = {
  areas,
  machines,
  shafts,
  meters,
  positions,
  'bearing-types': bearingTypes,
  greases,
  gauges,
} as const

export type RegisterName = keyof typeof registers
export type RowOf<N extends RegisterName> = z.output<(typeof registers)[N]['Row']>
type Filter = Readonly<Record<string, string | undefined>>

export function isRegisterName(text: string): text is RegisterName {
  return Object.hasOwn(registers, text)
}

interface Page<Row> {
  items: Row[]
  nextCursor: string | null
}

/** The tables answer alike; TypeScript can't follow a call through a union of them, so the endpoint is named plainly here. */
function ask<T>(endpoint: Endpoint, input: object, signal?: AbortSignal): Promise<T> {
  return call(endpoint, input as never, signal) as Promise<T>
}

export const registerQueries = {
  list: <N extends RegisterName>(site: string, name: N, filter: Filter = {}) =>
    infiniteQueryOptions({
      queryKey: ['setup', site, name, 'list', filter],
      queryFn: ({ pageParam, signal }) =>
        ask<Page<RowOf<N>>>(
          registers[name].list,
          { params: { site }, query: { ...filter, cursor: pageParam } },
          signal,
        ),
      initialPageParam: undefined as string | undefined,
      getNextPageParam: nextCursor,
    }),
  row: <N extends RegisterName>(site: string, name: N, id: string | undefined) =>
    queryOptions({
      queryKey: ['setup', site, name, id],
      queryFn: ({ signal }) => ask<RowOf<N>>(registers[name].read, { params: { site, id } }, signal),
      enabled: id !== undefined,
    }),
}

export function createRow(site: string, name: RegisterName, body: object): Promise<unknown> {
  return ask(registers[name].create, { params: { site }, body })
}

export function changeRow(site: string, name: RegisterName, row: { id: string; version: number }, body: object) {
  return ask(registers[name].change, { params: { site, id: row.id }, version: row.version, body })
}
