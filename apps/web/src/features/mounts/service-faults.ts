import type { FieldFault } from '@shaftbook/contract/problem'
import type { Faults } from './sheet-faults.ts'
import type { ReadReading } from './sheet-readings.ts'

/** What may have been meant with a reading that the service refused, by the key of its field. */
export type Suggestions = Readonly<Record<string, NonNullable<FieldFault['suggestions']>>>

/** The service's faults by the sheet's own field keys: `readings.3.typedValue` is where that reading stands. */
export function faultsByField(faults: readonly FieldFault[], readings: readonly ReadReading[]): Faults {
  return Object.fromEntries(faults.map(({ path, message }) => [fieldKey(path, readings), message]))
}

/** What the service says may have been meant, by the sheet's own field keys. */
export function suggestionsByField(faults: readonly FieldFault[], readings: readonly ReadReading[]): Suggestions {
  return Object.fromEntries(
    faults.flatMap(({ path, suggestions }) => (suggestions ? [[fieldKey(path, readings), suggestions]] : [])),
  )
}

function fieldKey(path: string, readings: readonly ReadReading[]): string {
  const at = /^readings\.(\d+)/.exec(path)?.[1]
  if (at !== undefined) return readings[Number(at)]?.key ?? 'bench.0.A'
  if (path === 'readings') return 'bench.0.A'
  if (path === 'bearing.id') return 'serial'
  return path.replace(/^(bearing|removal|details\.\w+)\./, '')
}
