import type { Endpoint } from '@shaftbook/contract/endpoint'
import type { AnyInput } from '../api/request.ts'
import { deviceBook, openDeviceBook, type PartRow } from './device-book.ts'
import { findHolder } from './holder.ts'
import { answerList, isKeptList, type KeptQuery } from './kept-lists.ts'
import { open, seal } from './seal.ts'

/** One downloaded thing. Lists are kept whole, by area or for the site; a single record by its id. */
export interface Download {
  key: string
  value: unknown
}

/** The key of a reply that is kept as it came: by endpoint, site and record. */
export function recordKey(endpoint: Pick<Endpoint, 'name'>, site = '', id = ''): string {
  return `${site}/record/${endpoint.name}/${id}`
}

/** The key of a whole list, of the site or of one of its areas. */
export function listKey(endpoint: Pick<Endpoint, 'name'>, site: string, areaId = ''): string {
  return `${site}/list/${endpoint.name}/${areaId}`
}

/** Replaces everything of a part, such as an area, by what was downloaded just now. */
export async function keepPart(part: string, downloads: readonly Download[]): Promise<void> {
  const holder = await findHolder()
  if (!holder) return
  const atMs = Date.now()
  const rows = downloads.map(({ key, value }) => ({
    key,
    part,
    atMs,
    sealed: seal(holder.key, `replies/${key}`, value),
  }))
  await deviceBook.transaction('rw', deviceBook.slots, deviceBook.replies, deviceBook.parts, async () => {
    // who signed out meanwhile leaves nothing behind
    const now = await deviceBook.slots.get('holder')
    if (now?.slot !== 'holder' || now.personId !== holder.personId) return
    await deviceBook.replies.where({ part }).delete()
    await deviceBook.replies.bulkPut(rows)
    await deviceBook.parts.put({ part, atMs, bytes: rows.reduce((sum, { sealed }) => sum + sealed.length, 0) })
  })
}

export async function dropPart(part: string): Promise<void> {
  await deviceBook.transaction('rw', deviceBook.replies, deviceBook.parts, async () => {
    await deviceBook.replies.where({ part }).delete()
    await deviceBook.parts.delete(part)
  })
}

/** What the device has in answer to a GET, or undefined. */
export async function keptAnswer(endpoint: Endpoint, input: AnyInput): Promise<unknown> {
  if (endpoint.method !== 'GET' || endpoint.gives !== undefined || !(await openDeviceBook())) return undefined
  const { params = {}, query = {} } = input
  const { site = '', id = '' } = params
  const [record] = await readAll([recordKey(endpoint, site, id)])
  if (record !== undefined) return record
  return isKeptList(endpoint.name) ? await keptList(endpoint.name, site, query) : undefined
}

/** A list of the site, or of the areas that are kept; undefined where nothing of it is kept. */
async function keptList(name: string, site: string, query: KeptQuery): Promise<unknown> {
  const prefix = listKey({ name }, site)
  const wanted = typeof query['areaId'] === 'string' ? `${prefix}${query['areaId']}` : prefix
  const keys = (await deviceBook.replies.where('key').startsWith(prefix).uniqueKeys()).map(String)
  const whole = keys.includes(prefix)
  if (keys.length === 0 || (!whole && !keys.some((key) => key.startsWith(wanted)))) return undefined
  const lists = (await readAll(keys)) as object[][]
  const answer = answerList(name, lists.flat(), query)
  // what hangs on one machine or position may lie in an area that is not kept
  const narrow = query['machineId'] ?? query['positionId']
  return !whole && narrow && answer?.items.length === 0 ? undefined : answer
}

async function readAll(keys: readonly string[]): Promise<unknown[]> {
  const holder = await findHolder()
  if (!holder) return []
  const rows = await deviceBook.replies.where('key').anyOf(keys).toArray()
  // a planned position of a kept area lies here twice: the younger one counts
  const youngest = new Map(rows.toSorted((a, b) => a.atMs - b.atMs).map((row) => [row.key, row]))
  return [...youngest.values()].map((row) => open(holder.key, `replies/${row.key}`, row.sealed))
}

/** What is kept, part by part. */
export async function keptParts(): Promise<Map<string, PartRow>> {
  return new Map((await deviceBook.parts.toArray()).map((row) => [row.part, row]))
}
