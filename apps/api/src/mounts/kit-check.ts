import { judgeKitCheck } from '@shaftbook/contract/judge-kit-check'
import type { MountDetails } from '@shaftbook/contract/mount-details'
import type { FieldFault, ProblemCode } from '@shaftbook/contract/problem'
import { DomainError } from '../domain-error.ts'
import type { MountBasis } from './fitting.ts'
import type { Seat } from './seat.store.ts'

/** Refuses to sign with parts that never go together, or without the reason for one that is not as planned. */
export function checkKit({ kitCheck, seat }: MountDetails, { position, shaftSystem }: Seat, basis: MountBasis): void {
  const { planned, type } = basis
  const place = { position, shaftSystem: seat?.shaftSystem ?? shaftSystem, planned, bearing: type }
  const answers = judgeKitCheck(kitCheck, place)
  const refused = answers.flatMap((answer, index): FieldFault[] =>
    answer.verdict === 'refused' ? [{ path: `details.kitCheck.${index}`, message: answer.sentence }] : [],
  )
  const asked = answers.flatMap((answer, index): FieldFault[] =>
    answer.verdict === 'asked' && (kitCheck[index]?.reason.length ?? 0) < 3
      ? [{ path: `details.kitCheck.${index}.reason`, message: answer.sentence }]
      : [],
  )
  refuse('part-does-not-fit', refused)
  refuse('reason-missing', asked)
}

function refuse(code: ProblemCode, faults: FieldFault[]): void {
  const sentences = new Set(faults.map(({ message }) => message))
  if (faults.length > 0) throw new DomainError(code, [...sentences].join(' '), faults)
}
