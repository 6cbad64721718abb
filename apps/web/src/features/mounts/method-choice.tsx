import type { Choice } from '../../ui/choice-field.tsx'
import { useSheet } from './sheet-context.ts'
import { SheetChoice } from './sheet-fields.tsx'
import type { Method } from './sheet.ts'

const methods: readonly Choice<Method>[] = [
  { value: 'feeler', label: 'Clearance by feelers', hint: 'the first choice: the band is judged' },
  { value: 'drive-up', label: 'Axial travel', hint: 'only from a zero point found by resistance' },
  { value: 'by-feel', label: 'By feel', hint: 'the ring swivels with slight resistance; a named person' },
]

/** What tells when to stop driving; it decides what the next steps ask. */
export function MethodChoice() {
  const { scope } = useSheet()
  return scope.taper ? <SheetChoice at="method" legend="What tells when to stop driving?" choices={methods} /> : null
}
