import type { ProblemCode } from '@shaftbook/contract/problem'
import { DomainError } from '../domain-error.ts'

/** What the tables refuse, by the name of the constraint, in the words of the workshop. */
const refusals: Record<string, readonly [ProblemCode, string, string]> = {
  one_bearing_at_a_time: ['position-occupied', 'positionId', 'The position carries another bearing at that time.'],
  fitment_open: [
    'position-occupied',
    'positionId',
    'The position already carries a bearing: log its removal with the mount.',
  ],
  one_place_at_a_time: [
    'bearing-fitted-elsewhere',
    'bearing.id',
    'This bearing is fitted at another position at that time.',
  ],
  fitment_check: ['removal-before-mounting', 'removedAt', 'A bearing cannot leave before it was fitted.'],
  bearing_site_id_serial_key: [
    'name-already-used',
    'bearing.serial',
    'A bearing with this serial number is registered already.',
  ],
  maker_chart_row_site_id_chart_id_taper_numrange_excl: [
    'not-allowed-here',
    'rows',
    'Two rows of the chart cover the same bore and taper: make the ranges meet without overlap.',
  ],
}

interface Refused {
  readonly sqlState: string
  readonly constraint: string
}

/** Turns what PostgreSQL refused into a sentence; anything else stays what it was. */
export function asDomainError(error: unknown): unknown {
  const refused = findRefusal(error)
  if (!refused) return error
  const { sqlState, constraint } = refused
  const known = Object.entries(refusals).find(([name]) => constraint.includes(name))?.[1]
  const options = { cause: error }
  if (known) return new DomainError(known[0], known[2], [{ path: known[1], message: known[2] }], options)
  if (sqlState === '23505') {
    const path = fieldOf(constraint, 'key')
    const message = 'This name is already taken at this site: choose another.'
    return new DomainError('name-already-used', message, [{ path, message }], options)
  }
  if (sqlState === '23503') {
    const path = fieldOf(constraint, 'fkey')
    const message = 'It names a record that is not there at this site.'
    return new DomainError('not-found', message, [{ path, message }], options)
  }
  return error
}

/** `machine_site_id_area_id_fkey` -> `areaId`. */
function fieldOf(constraint: string, suffix: string): string {
  const column = new RegExp(`_site_id_(?:.*_id_)?([a-z_]+?)_${suffix}`).exec(constraint)?.[1] ?? constraint
  return column.replaceAll(/_([a-z])/g, (_, letter: string) => letter.toUpperCase())
}

/** Looks for the PostgreSQL error inside what Prisma or pg threw. */
function findRefusal(error: unknown, depth = 0): Refused | undefined {
  if (typeof error !== 'object' || error === null || depth > 5) return undefined
  const record = error as Record<string, unknown>
  const sqlState = text(record['originalCode']) ?? text(record['code'])
  if (sqlState && /^23[0-9P]\d\d$/.test(sqlState)) {
    return { sqlState, constraint: constraintName(record) }
  }
  return (
    findRefusal(record['meta'], depth + 1) ??
    findRefusal(record['driverAdapterError'], depth + 1) ??
    findRefusal(record['cause'], depth + 1)
  )
}

function constraintName(record: Record<string, unknown>): string {
  const named = record['constraint']
  if (typeof named === 'string') return named
  const index =
    typeof named === 'object' && named !== null ? text((named as Record<string, unknown>)['index']) : undefined
  const message = text(record['originalMessage']) ?? text(record['message']) ?? ''
  return index ?? /constraint "([^"]+)"/.exec(message)?.[1] ?? message
}

function text(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined
}
