import { bearingReading } from '@shaftbook/bearing/readings'
import { needsReason, rowReadings, type MountQuestion } from '@shaftbook/contract/judge-mount'
import type { Judgement } from '@shaftbook/contract/judgement'
import type { FieldFault } from '@shaftbook/contract/problem'
import { DomainError, fieldError } from '../domain-error.ts'

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
  if (needsReason(judgement) && !record.outOfBandReason) {
    const message = `${shortfall(judgement)} Say why it is left so, or mount again.`
    throw fieldError('reason-missing', 'outOfBandReason', message)
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
    const answer = bearingReading(rowReadings(readings, moment), moment)
    return answer.kind === 'refused' ? [{ path: 'readings', message: answer.sentence }] : []
  })
  if (faults.length > 0) throw new DomainError('row-missing', faults.map((fault) => fault.message).join(' '), faults)
}

/** What a mount falls short of, as a sentence. */
function shortfall({ verdict, residual, reductionUm, band }: Judgement): string {
  const limits = band ? ` of ${band.minUm} to ${band.maxUm} µm` : ''
  if (verdict === 'under') return `The reduction of ${reductionUm} µm is under its band${limits}.`
  if (verdict === 'over') return `The reduction of ${reductionUm} µm is over its band${limits}.`
  if (verdict === 'not-proven') return 'It is not proven that the reduction is inside its band.'
  if (residual === 'too-small') return 'The mounted clearance is too small.'
  return 'It is not proven that the mounted clearance is large enough.'
}
