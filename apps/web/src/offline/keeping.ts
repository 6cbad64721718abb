import { NoAnswerError, ProblemError } from '../api/problem-error.ts'
import { deviceBook } from './device-book.ts'
import { downloadArea, downloadSite } from './downloads.ts'
import { findHolder } from './holder.ts'
import { dropPart, keepPart, keptParts } from './kept-replies.ts'
import { isSilent } from './network.ts'

/** What is kept is downloaded again at most so often. */
const freshMs = 5 * 60_000
const lookMs = 60_000

/** A moment that lies ahead was written by a clock that was put back since: what it dates is as good as old. */
export function isOld(atMs: number, nowMs: number): boolean {
  return atMs > nowMs || atMs < nowMs - freshMs
}

export const sitePart = (site: string): string => site
export const areaPart = (site: string, areaId: string): string => `${site}/${areaId}`

function choiceKey(personId: string, site: string): string {
  return `${personId}/${site}`
}

/** The areas that this person keeps on this device. */
export async function keptAreas(personId: string, site: string): Promise<string[]> {
  return (await deviceBook.choices.get(choiceKey(personId, site)))?.areaIds ?? []
}

/** Keeps the areas, and nothing of the others. What is new is downloaded now; throws where that fails. */
export async function chooseAreas(personId: string, site: string, areaIds: string[]): Promise<void> {
  const before = await keptAreas(personId, site)
  await deviceBook.choices.put({ key: choiceKey(personId, site), areaIds })
  for (const areaId of before) if (!areaIds.includes(areaId)) await dropPart(areaPart(site, areaId))
  // an area is of no use without the lists of its site
  if (areaIds.length > 0 && !(await keptParts()).has(sitePart(site)))
    await keepPart(sitePart(site), await downloadSite(site))
  for (const areaId of areaIds)
    if (!before.includes(areaId)) await keepPart(areaPart(site, areaId), await downloadArea(site, areaId))
  // a browser may clear what it does not know to be wanted
  if (areaIds.length > 0) await navigator.storage?.persist?.()
}

/** Since when the oldest part of what is kept of a site stands, or null where nothing is kept. */
export async function keptSince(site: string): Promise<string | null> {
  const parts = [...(await keptParts()).values()].filter(({ part }) => part.split('/')[0] === site)
  return parts.length === 0 ? null : new Date(Math.min(...parts.map(({ atMs }) => atMs))).toISOString()
}

let refreshing: Promise<void> | null = null

/** Downloads again what is kept of a site, where it is older than a few minutes or `now` asks for it. */
export function refreshKept(site: string, options: Refresh): Promise<void> {
  refreshing ??= refresh(site, options).finally(() => {
    refreshing = null
  })
  return refreshing
}

interface Refresh {
  /** Also what is still fresh. */
  now: boolean
  /** The planned mounts are kept also where no area is chosen. */
  planned: boolean
}

async function refresh(site: string, { now, planned }: Refresh): Promise<void> {
  const holder = await findHolder()
  if (!holder) return
  const areaIds = await keptAreas(holder.personId, site)
  if (areaIds.length === 0 && !planned) return
  const kept = await keptParts()
  const isStale = (part: string): boolean => now || isOld(kept.get(part)?.atMs ?? 0, Date.now())
  if (isStale(sitePart(site))) await keepPart(sitePart(site), await downloadSite(site))
  for (const areaId of areaIds) {
    const part = areaPart(site, areaId)
    if (isStale(part)) await keepPart(part, await downloadArea(site, areaId))
  }
}

/** Keeps what is downloaded of a site fresh while its pages are open. Returns how to stop. */
export function keepFresh(site: string, { planned }: Pick<Refresh, 'planned'>): () => void {
  const look = (): void => {
    if (isSilent() || document.visibilityState === 'hidden') return
    refreshKept(site, { now: false, planned }).catch(leaveForLater)
  }
  const first = setTimeout(look, 2_000)
  const timer = setInterval(look, lookMs)
  return () => {
    clearTimeout(first)
    clearInterval(timer)
  }
}

/** A refresh that fails leaves what was kept before; the next look tries again. Anything else is a fault of ours. */
function leaveForLater(error: unknown): void {
  if (!(error instanceof NoAnswerError || error instanceof ProblemError)) throw error
}
