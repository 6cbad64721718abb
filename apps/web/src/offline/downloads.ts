import { readSite } from '@shaftbook/contract/access'
import { listPositionHistories, listPositionOverviews } from '@shaftbook/contract/device'
import type { Endpoint } from '@shaftbook/contract/endpoint'
import { countFlags, listFlags } from '@shaftbook/contract/flags'
import { listDue } from '@shaftbook/contract/greasing'
import { guns } from '@shaftbook/contract/guns'
import { listMakerCharts, readMakerChart } from '@shaftbook/contract/maker-charts'
import { listMountPlans, readMountPlan } from '@shaftbook/contract/mount-plans'
import { listMounts, readMount } from '@shaftbook/contract/mounts'
import {
  listPositionBoard,
  listTreeAreas,
  listTreeMachines,
  readPositionHistory,
  readPositionOverview,
  type PositionOverview,
} from '@shaftbook/contract/position-views'
import { areas, bearingTypes, gauges, greases } from '@shaftbook/contract/register-tables'
import { listRounds, readRound } from '@shaftbook/contract/rounds'
import { request, type AnyInput } from '../api/request.ts'
import { listKey, recordKey, type Download } from './kept-replies.ts'

/** All pages of a list, one after the other, so that a phone does nothing else meanwhile but wait. */
async function wholeList<Row>(endpoint: Endpoint, input: AnyInput, limit = 200): Promise<Row[]> {
  const rows: Row[] = []
  let cursor: string | null = null
  do {
    const query: AnyInput['query'] = { ...input.query, limit, ...(cursor !== null && { cursor }) }
    const page: { items: Row[]; nextCursor: string | null } = await readPage<Row>(endpoint, { ...input, query })
    rows.push(...page.items)
    cursor = page.nextCursor
  } while (cursor !== null)
  return rows
}

async function readPage<Row>(
  endpoint: Endpoint,
  input: AnyInput,
): Promise<{ items: Row[]; nextCursor: string | null }> {
  const page: unknown = await request<Endpoint>(endpoint, input)
  return page as { items: Row[]; nextCursor: string | null }
}

/** What every sheet of the site needs once, and everything of the planned mounts. */
export async function downloadSite(site: string): Promise<Download[]> {
  const params = { site }
  const whole = async (endpoint: Endpoint, query: AnyInput['query'] = {}): Promise<Download> => ({
    key: listKey(endpoint, site),
    value: await wholeList(endpoint, { params, query }),
  })
  const downloads: Download[] = [
    { key: recordKey(readSite, site), value: await request(readSite, { params }) },
    { key: recordKey(countFlags, site), value: await request(countFlags, { params }) },
    { key: recordKey(listTreeAreas, site), value: await request(listTreeAreas, { params }) },
  ]
  for (const { list } of [areas, bearingTypes, greases, gauges, guns]) downloads.push(await whole(list))

  const charts = await whole(listMakerCharts)
  const drafts = await whole(listMounts, { state: 'draft' })
  const plans = await whole(listMountPlans)
  downloads.push(charts, drafts, plans)
  for (const id of idsOf(charts)) {
    downloads.push({
      key: recordKey(readMakerChart, site, id),
      value: await request(readMakerChart, { params: { site, id } }),
    })
  }
  for (const id of idsOf(drafts)) {
    downloads.push({ key: recordKey(readMount, site, id), value: await request(readMount, { params: { site, id } }) })
  }
  for (const plan of plans.value as { id: string }[]) {
    downloads.push({ key: recordKey(readMountPlan, site, plan.id), value: plan })
  }
  return [...downloads, ...(await rounds(site)), ...(await positions(site, { planned: 'true' }))]
}

/** The rounds of the site, each with its stops. */
async function rounds(site: string): Promise<Download[]> {
  const list = { key: listKey(listRounds, site), value: await wholeList(listRounds, { params: { site } }) }
  const whole: Download[] = []
  for (const id of idsOf(list)) {
    whole.push({ key: recordKey(readRound, site, id), value: await request(readRound, { params: { site, id } }) })
  }
  return [list, ...whole]
}

/** Every position of an area, its lists, its flags. */
export async function downloadArea(site: string, areaId: string): Promise<Download[]> {
  const ofArea = async (endpoint: Endpoint): Promise<Download> => ({
    key: listKey(endpoint, site, areaId),
    value: await wholeList(endpoint, { params: { site }, query: { areaId } }),
  })
  const machines = await wholeList(listTreeMachines, { params: { site, id: areaId } })
  return [
    await ofArea(listPositionBoard),
    await ofArea(listDue),
    await ofArea(listFlags),
    { key: recordKey(listTreeMachines, site, areaId), value: { items: machines, nextCursor: null } },
    ...(await positions(site, { areaId })),
  ]
}

/** What the page of a position shows, for many. */
async function positions(site: string, query: AnyInput['query']): Promise<Download[]> {
  const input = { params: { site }, query }
  const overviews = await wholeList<PositionOverview>(listPositionOverviews, input, 50)
  const histories = await wholeList<{ positionId: string }>(listPositionHistories, input, 50)
  return [
    ...overviews.map((value) => ({ key: recordKey(readPositionOverview, site, value.position.id), value })),
    ...histories.map((value) => ({ key: recordKey(readPositionHistory, site, value.positionId), value })),
  ]
}

function idsOf({ value }: Download): string[] {
  return (value as { id: string }[]).map(({ id }) => id)
}
