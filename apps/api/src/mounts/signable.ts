import { bearingReading } from '@shaftbook/bearing/readings'
import type { Judgement } from '@shaftbook/contract/mounts'
import type { FieldFault } from '@shaftbook/contract/problem'
import { DomainError, fieldError } from '../domain-error.ts'
import type { MountQuestion } from './judge.ts'

type Signed = Pick<MountQuestion, 'method' | 'readings' | 'driveUpMm' | 'bands'> & {
  readonly nutAngleDeg: number | null
  readonly outOfBandReason: string | null
}

/** Refuses to sign a record that is not complete, or that is not inside its limits without a reason. */
export function checkSignable(record: Signed, judgement: Judgement): void {
  if (record.bands.judged && record.method === 'feeler') checkRows(record)
  if (record.method === 'drive-up' && record.driveUpMm === null && record.nutAngleDeg === null) {
    throw fieldError(
      'request-invalid',
      'driveUpMm',
      'Enter the drive-up or the nut angle, since the mount was done by it.',
    )
  }
  const outside = shortfall(judgement)
  if (outside !== null && !record.outOfBandReason) {
    throw fieldError('reason-missing', 'outOfBandReason', `${outside} Say why it is left so, or mount again.`)
  }
}

/** A mount by feel names who felt it; that is needed from the first draft on. */
export function checkByFeel({ method, byFeelPerson }: { method: string; byFeelPerson: string | null }): void {
  if (method === 'by-feel' && !byFeelPerson) {
    throw fieldError(
      'request-invalid',
      'byFeelPerson',
      'Say who felt the clearance: a mount by feel stands on a named person.',
    )
  }
}

function checkRows({ readings }: Signed): void {
  const faults = (['bench', 'mounted'] as const).flatMap((moment): FieldFault[] => {
    const rows = readings.filter((reading) => reading.moment === moment)
    const answer = bearingReading(
      rows.map(({ row, clearanceUm }) => ({ row, um: clearanceUm })),
      moment,
    )
    return answer.kind === 'refused' ? [{ path: 'readings', message: answer.sentence }] : []
  })
  if (faults.length > 0) throw new DomainError('row-missing', faults.map((fault) => fault.message).join(' '), faults)
}

/** What a mount falls short of, as a sentence. */
function shortfall({ verdict, residual, reductionUm, band }: Judgement): string | null {
  const limits = band ? ` of ${band.minUm} to ${band.maxUm} µm` : ''
  if (verdict === 'under') return `The reduction of ${reductionUm} µm is under its band${limits}.`
  if (verdict === 'over') return `The reduction of ${reductionUm} µm is over its band${limits}.`
  if (verdict === 'not-proven') return 'It is not proven that the reduction is inside its band.'
  if (residual === 'too-small') return 'The mounted clearance is too small.'
  if (residual === 'not-proven') return 'It is not proven that the mounted clearance is large enough.'
  return null
}
