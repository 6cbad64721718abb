import type { ReactNode } from 'react'
import { Caution } from '../../ui/caution.tsx'
import { useSheet } from './sheet-context.ts'

/** A caution for the work at the shaft; a correction is written afterwards, where the danger is over. */
export function WorkCaution({ title, children }: { title: string; children: ReactNode }) {
  const { scope } = useSheet()
  return scope.purpose === 'correction' ? null : <Caution title={title}>{children}</Caution>
}
