import type { Fitment, PositionHistory } from '@shaftbook/contract/position-views'
import type { EndKind } from '@shaftbook/contract/removals'
import type { FitmentEnd, LifeFitment } from '../../ui/life-strip-geometry.ts'
import type { HoursSoFar } from './hours-so-far.ts'

const ends: Readonly<Record<EndKind, FitmentEnd>> = { failed: 'failed', 'not-failed': 'removed', lost: 'lost' }

/** What the life strip draws, oldest first: each stay with the greasings that fell into it. */
export function lifeFitments(
  history: Pick<PositionHistory, 'fitments' | 'greasings'>,
  openHours: HoursSoFar | null,
): LifeFitment[] {
  return history.fitments
    .map((fitment) => ({
      id: fitment.id,
      bearing: fitment.serial ? `${fitment.designation}, no. ${fitment.serial}` : fitment.designation,
      fittedOn: fitment.fittedAt,
      removedOn: fitment.removedAt ?? undefined,
      end: fitment.endKind === null ? undefined : ends[fitment.endKind],
      mode: modeOf(fitment),
      verdict: fitment.verdict ?? undefined,
      ...hoursOf(fitment, openHours),
      greasedOn: history.greasings
        .filter(({ greasedAt }) => isDuring(greasedAt, fitment))
        .map((each) => each.greasedAt),
    }))
    .sort((a, b) => a.fittedOn.localeCompare(b.fittedOn))
}

function modeOf({ endKind, modeTerm, modeClause }: Fitment): string | undefined {
  if (modeTerm !== null) return `${modeTerm.toLowerCase()} (${modeClause})`
  return endKind === 'failed' ? 'mode not found out' : undefined
}

function hoursOf(fitment: Fitment, openHours: HoursSoFar | null) {
  if (fitment.removedAt === null)
    return { runHours: openHours?.hours, runHoursEstimated: openHours?.source === 'estimate' }
  if (fitment.runHours === null) return { runHours: undefined }
  return { runHours: fitment.entryAgeHours + fitment.runHours, runHoursEstimated: fitment.hoursSource === 'estimate' }
}

function isDuring(at: string, { fittedAt, removedAt }: Fitment): boolean {
  return at >= fittedAt && (removedAt === null || at < removedAt)
}
