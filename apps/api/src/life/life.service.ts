import type { LifeSummary } from '@shaftbook/contract/life'
import type { Sql } from '../db/database.ts'
import { modeTerm } from '../removals/end-of-life.ts'
import { countLives, countModes, worstPositions } from './life.store.ts'

const worstShown = 20

/** What the stays of a site's bearings add up to. Three statements, whatever the number of positions. */
export async function lifeSummary(sql: Sql, siteId: string): Promise<LifeSummary> {
  const { metered, estimated, runningHours, staysWithout, ...counts } = await countLives(sql, siteId)
  const modes = await countModes(sql, siteId)
  return {
    ...counts,
    hours: { metered, estimated, running: runningHours, staysWithout },
    byMode: modes.map((mode) => ({ ...mode, modeTerm: modeTerm(mode.modeClause) })),
    worst: await worstPositions(sql, siteId, worstShown),
  }
}
