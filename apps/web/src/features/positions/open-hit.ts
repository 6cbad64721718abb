import { listPositionBoard, type PositionListItem } from '@shaftbook/contract/position-views'
import type { QueryClient } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import type { PositionFilterValues } from './position-filters.tsx'

/** The position that a search means: the only one found, or the one whose tag was typed in full; else null. */
export function meantPosition(typed: string, found: readonly Pick<PositionListItem, 'id' | 'tag'>[]): string | null {
  if (found.length === 1) return found[0]!.id
  const plain = (text: string) => text.replaceAll(/\s/g, '').toUpperCase()
  return found.find(({ tag }) => plain(tag) === plain(typed))?.id ?? null
}

/** Asks for what was typed at once and names the position that it means. */
export async function openHit(
  client: QueryClient,
  site: string,
  { q = '', area, machine, verdict, due }: PositionFilterValues,
): Promise<string | null> {
  const query = { search: q, areaId: area, machineId: machine, verdict, dueState: due, limit: 20 }
  const { items } = await client.fetchQuery({
    queryKey: ['positions', site, 'hit', query],
    queryFn: ({ signal }) => call(listPositionBoard, { params: { site }, query }, signal),
  })
  return meantPosition(q, items)
}
