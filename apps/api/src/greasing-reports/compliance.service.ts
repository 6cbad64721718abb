import { checkDose } from '@shaftbook/bearing/grease'
import { addMonths, daysBetween } from '@shaftbook/bearing/plain-date'
import {
  longestPeriodDays,
  mostGroups,
  mostOverdosed,
  type ComplianceTally,
  type GreasingCompliance,
  type readGreasingCompliance,
} from '@shaftbook/contract/greasing-reports'
import { plantDay } from '@shaftbook/contract/time-zone'
import type { z } from 'zod'
import type { SiteMembership } from '../access/session.ts'
import type { Context } from '../context.ts'
import type { Scope } from '../db/database.ts'
import { fieldError } from '../domain-error.ts'
import { countWindows, findOverdoses, type Counted } from './compliance.store.ts'

interface Question {
  readonly scope: Scope
  readonly site: SiteMembership
  readonly query: z.output<typeof readGreasingCompliance.query>
}

/** How the windows of a period were met. Two statements over an index range of the period. R-COMPL, R-OVER. */
export async function greasingCompliance(
  { db, now }: Context,
  { scope, site, query }: Question,
): Promise<GreasingCompliance> {
  const today = plantDay(now(), site.timeZone)
  const { by, to = today, from = addMonths(`${to.slice(0, 8)}01`, -11), ...filters } = query
  checkPeriod(from, to)
  const period = { siteId: scope.siteId, timeZone: site.timeZone, from, to, today, ...filters }
  const { rows, overdoses } = await db.readSite(scope, async (sql) => ({
    rows: await countWindows(sql, period, by, mostGroups),
    overdoses: await findOverdoses(sql, period, mostOverdosed),
  }))
  const months = rows.flatMap(({ month, ...row }) => (month === null ? [] : [{ month, ...tallied(row) }]))
  const groups = rows.filter(({ month }) => month === null)
  return {
    from,
    to,
    total: tallied(months.reduce(sum, none)),
    months,
    groups: groups.map((row) => ({ id: row.id, name: row.name, ...tallied(row) })),
    groupsInAll: groups[0]?.groupsInAll ?? 0,
    overdosed: overdoses.map(({ id, positionId, tag, greasedAt, doseG, plannedDoseG, signedBy }) => ({
      id,
      positionId,
      tag,
      greasedAt: greasedAt.toISOString(),
      doseG,
      plannedDoseG,
      verdict: checkDose(doseG, plannedDoseG).verdict === 'far-over' ? 'far-over' : 'over',
      signedBy,
    })),
    overdosedInAll: overdoses[0]?.inAll ?? 0,
  }
}

function checkPeriod(from: string, to: string): void {
  const days = daysBetween(from, to)
  if (days < 0)
    throw fieldError('request-invalid', 'to', 'The period ends before it begins: set its end to a later day.')
  if (days > longestPeriodDays)
    throw fieldError('request-invalid', 'from', 'The period is longer than three years: ask for a shorter one.')
}

const none: Counted = { met: 0, early: 0, late: 0, missed: 0, wrongAmount: 0, notDone: 0 }

function sum(a: Counted, b: Counted): Counted {
  return {
    met: a.met + b.met,
    early: a.early + b.early,
    late: a.late + b.late,
    missed: a.missed + b.missed,
    wrongAmount: a.wrongAmount + b.wrongAmount,
    notDone: a.notDone + b.notDone,
  }
}

/** Windows due and met: an early greasing opens the next interval, no window was due for it. R-COMPL. */
function tallied({ met, early, late, missed, wrongAmount, notDone }: Counted): ComplianceTally {
  const windowsDue = met + late + missed + wrongAmount + notDone
  const percent = windowsDue === 0 ? null : (met * 100) / windowsDue
  return { met, early, late, missed, wrongAmount, notDone, windowsDue, percent }
}
