import { listKits } from '@shaftbook/contract/kits'
import { listMakerCharts } from '@shaftbook/contract/maker-charts'
import { bearingTypes } from '@shaftbook/contract/register-tables'
import { queryOptions, useQuery } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import type { Offered } from './register-form.ts'

/** What a position's form offers: every page of bearing types, kits and charts. */
const offeredQuery = (site: string) =>
  queryOptions({
    queryKey: ['setup', site, 'offered'],
    queryFn: async ({ signal }): Promise<Offered> => {
      const [types, kits, charts] = await Promise.all([
        everyPage((cursor) => call(bearingTypes.list, { params: { site }, query: { limit: 200, cursor } }, signal)),
        everyPage((cursor) => call(listKits, { params: { site }, query: { limit: 200, cursor } }, signal)),
        everyPage((cursor) => call(listMakerCharts, { params: { site }, query: { limit: 200, cursor } }, signal)),
      ])
      return {
        bearingTypes: types.map(({ id, designation }) => ({ value: id, label: designation })),
        kits: kits.map(({ id, name }) => ({ value: id, label: name })),
        charts: charts.map(({ id, maker, document, edition }) => ({
          value: id,
          label: `${maker}, ${document}, edition ${edition}`,
        })),
      }
    },
  })

async function everyPage<Row>(
  read: (cursor: string | undefined) => Promise<{ items: Row[]; nextCursor: string | null }>,
): Promise<Row[]> {
  const rows: Row[] = []
  let cursor: string | undefined
  do {
    const page = await read(cursor)
    rows.push(...page.items)
    cursor = page.nextCursor ?? undefined
  } while (cursor !== undefined)
  return rows
}

export function useOffered(site: string, wanted: boolean) {
  return useQuery({ ...offeredQuery(site), enabled: wanted })
}
