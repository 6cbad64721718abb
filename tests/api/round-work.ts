import { randomUUID } from 'node:crypto'
import type { SmallSite } from '../../seeds/builders/small-site.ts'

/** A gun that gives 1.2 g a stroke, loaded with the grease of the site's plans. */
export function aGun(site: SmallSite, over: Record<string, unknown> = {}) {
  const weighed = { gramsPerStroke: 1.2, calibratedOn: '2026-01-15', strokesWeighed: 10 }
  return { id: randomUUID(), name: `Gun ${randomUUID().slice(0, 8)}`, ...weighed, greaseId: site.greaseId, ...over }
}

/** A round of these positions, in this order. */
export function aRound(positionIds: readonly string[], over: Record<string, unknown> = {}) {
  return { id: randomUUID(), name: `Round ${randomUUID().slice(0, 8)}`, stops: positionIds.map(aStop), ...over }
}

export function aStop(positionId: string) {
  return { id: randomUUID(), positionId, task: 'regrease' }
}

/** A walk of the round, begun at the moment. */
export function aWalk(round: ReturnType<typeof aRound>, startedAt: string) {
  return { id: randomUUID(), roundId: round.id, startedAt, stops: round.stops }
}

export interface Given {
  readonly gun: { id: string; gramsPerStroke: number; greaseId: unknown }
  readonly strokes: number
}

/** A stop that is greased with strokes of a gun. */
export function aDose(stopId: string, doneAt: string, { gun, strokes }: Given, over: Record<string, unknown> = {}) {
  const greasing = {
    id: randomUUID(),
    greaseId: gun.greaseId,
    gunId: gun.id,
    strokes,
    gramsPerStroke: gun.gramsPerStroke,
  }
  return { id: randomUUID(), stopId, outcome: 'done', doneAt, greasing, ...over }
}
