import { formatLength, unitLabels } from '@shaftbook/bearing/units'
import type { Reading } from '@shaftbook/contract/mounts'

/** What stands on every paper that is taken to a machine. */
export const siteRulesFirst =
  "The site's rules, the makers' manuals and licensed practice come first. This paper does not know whether the machine is safe."

/** A length in micrometres, with a decimal only where there is one. */
export function micrometres(um: number): string {
  return formatLength(um, 'um', { decimals: decimalsOf(um) })
}

export function micrometreRange(minUm: number, maxUm: number): string {
  const decimals = Math.max(decimalsOf(minUm), decimalsOf(maxUm))
  return `${formatLength(minUm, 'um', { decimals, withUnit: false })} to ${formatLength(maxUm, 'um', { decimals })}`
}

function decimalsOf(um: number): number {
  return Number.isInteger(um) ? 0 : 1
}

export function asTyped({ typedValue, typedUnit }: Pick<Reading, 'typedValue' | 'typedUnit'>): string {
  return `${typedValue} ${unitLabels[typedUnit]}`
}

export function withUnit(value: number | null, unit: string): string | null {
  return value === null ? null : `${plainNumber(value)}${/^°(?!C)/.test(unit) ? '' : ' '}${unit}`
}

export function plainNumber(value: number): string {
  return new Intl.NumberFormat('en-GB', { useGrouping: false, maximumFractionDigits: 3 }).format(value)
}

/** A moment as the plant's clock shows it: 25 Nov 2026, 14:05. */
export function plantTime(instant: string | Date, timeZone: string): string {
  const shown = { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' } as const
  return new Intl.DateTimeFormat('en-GB', { ...shown, hourCycle: 'h23', timeZone }).format(new Date(instant))
}

export function dayWords(day: string): string {
  return new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00:00Z`),
  )
}
