import { listPositionBoard, readPositionOverview, type PositionListItem } from '@shaftbook/contract/position-views'
import { queryOptions } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { ProblemError } from '../../api/problem-error.ts'

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i

export interface FoundPosition {
  readonly id: string
  readonly tag: string
}

/** The position that a tag or an id stands for, or null; from the device where the network is silent. */
export async function findPosition(
  site: string,
  reference: string,
  signal?: AbortSignal,
): Promise<FoundPosition | null> {
  if (uuid.test(reference)) return await findById(site, reference, signal)
  const query = { search: reference, limit: 200 }
  const { items } = await call(listPositionBoard, { params: { site }, query }, signal)
  return tagged(items, reference)
}

/** Of several whose tags differ by spaces or letter case only, the one that is written the same. */
export function tagged(
  items: readonly Pick<PositionListItem, 'id' | 'tag'>[],
  reference: string,
): FoundPosition | null {
  const alike = items.filter(({ tag }) => folded(tag) === folded(reference))
  return alike.find(({ tag }) => tag === reference) ?? alike[0] ?? null
}

function folded(tag: string): string {
  return tag.replaceAll(/\s/g, '').toLowerCase()
}

async function findById(site: string, id: string, signal?: AbortSignal): Promise<FoundPosition | null> {
  try {
    const { position } = await call(readPositionOverview, { params: { site, id } }, signal)
    return position
  } catch (error) {
    if (error instanceof ProblemError && error.problem.status === 404) return null
    throw error
  }
}

export const scanQueries = {
  position: (site: string, reference: string) =>
    queryOptions({
      queryKey: ['scan', site, 'position', reference],
      queryFn: ({ signal }) => findPosition(site, reference, signal),
      retry: false,
    }),
  overview: (site: string, id: string) =>
    queryOptions({
      queryKey: ['positions', site, 'overview', id],
      queryFn: ({ signal }) => call(readPositionOverview, { params: { site, id } }, signal),
    }),
}
