import { randomUUID } from 'node:crypto'
import type { SmallSite } from '../../seeds/builders/small-site.ts'
import { aKit, aKitLine, aPart, type PartRow } from '../../seeds/builders/catalogue-rows.ts'
import type { TestApp } from '../support/app.ts'
import { aMount, aSpot, insert, type Spot } from './shaft-work.ts'

/** What lies on the bench for the locating position of a small site, as its kit plans it. */
export function wholeKit() {
  return [
    aKitCheckLine('bearing', '22220 K/C3'),
    aKitCheckLine('sleeve', 'H320'),
    aKitCheckLine('nut', 'KM20'),
    aKitCheckLine('washer', 'MB20'),
    aKitCheckLine('grease', 'Marl EP 2', { quantity: 300, unit: 'g' }),
  ]
}

export function aKitCheckLine(kind: string, plannedCode: string, over: object = {}) {
  return { kind, plannedCode, found: 'as-planned', quantity: 1, ...over }
}

/** The contents of a mount as a draft is changed by them. */
export function draftOf(body: ReturnType<typeof aMount>): Record<string, unknown> {
  const { id: _id, positionId: _position, sign: _sign, ...contents } = body
  return contents
}

export interface KitSpot extends Spot {
  readonly kitId: string
  readonly nut: PartRow
}

/** A spot whose kit holds a lock nut. */
export async function aSpotWithKit(service: TestApp): Promise<KitSpot> {
  const { owner, alpha } = service
  const { siteId } = alpha
  const kit = aKit({ siteId, name: `Kit ${randomUUID()}` })
  const nut = aPart({ siteId, kind: 'nut', designation: 'KM20', description: 'Lock nut' })
  await insert(owner, siteId, 'part', [nut])
  await insert(owner, siteId, 'kit', [kit])
  await insert(owner, siteId, 'kit_line', [aKitLine({ siteId, kitId: kit.id, partId: nut.id, lineNumber: 1 })])
  const spot = await aSpot(service, { position: { kitId: kit.id } })
  return { ...spot, kitId: kit.id, nut }
}

export function aPlan(site: SmallSite, over: Record<string, unknown> = {}) {
  return {
    id: randomUUID(),
    positionId: site.locating.id,
    plannedFor: inDays(7),
    reason: 'Bearing reads warm since June',
    ...over,
  }
}

/** The day so many days from now, in the time zone of the small sites. */
export function inDays(days: number): string {
  return new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10)
}
