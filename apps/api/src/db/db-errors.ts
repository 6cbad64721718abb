import type { ProblemCode } from '@shaftbook/contract/problem'
import { DomainError, fieldError } from '../domain-error.ts'

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
  meter_site_id_machine_id_key: [
    'name-already-used',
    'machineId',
    'This machine already has an hour meter: log an exchange on that one.',
  ],
  membership_pkey: [
    'name-already-used',
    'email',
    'This person is let in at this site already: change the role instead.',
  ],
  kit_line_pkey: [
    'id-already-used',
    'lines',
    'A line has an id that stands for another line: give every line its own.',
  ],
  mount_plan_open: [
    'not-allowed-here',
    'plannedFor',
    'A mount is planned at this position for that day already: change that plan.',
  ],
  round_stop_pkey: [
    'id-already-used',
    'stops',
    'A stop has an id that stands for another stop: give every stop its own.',
  ],
  round_stop_site_id_round_id_position_id_task_key: [
    'not-allowed-here',
    'stops',
    'A position stands twice in the round with the same task: take one of the two out.',
  ],
  walk_stop_once: [
    'stop-already-done',
    'stopId',
    'What was done at this stop of the walk is signed already: correct that greasing where it is wrong.',
  ],
  maker_chart_row_pkey: [
    'id-already-used',
    'rows',
    'A row has an id that stands for another row: give every row its own.',
  ],
  maker_chart_row_overlap: [
    'not-allowed-here',
    'rows',
    'Two rows of the chart cover the same bore, taper and class: make the ranges meet without overlap.',
  ],
}

/** What Node and Prisma call a connection that is not there, or not in time. */
const brokenConnections = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'EPIPE',
  'ETIMEDOUT',
  'P1001',
  'P1002',
  'P1017',
  'P2028',
])
/** A NUL character in a text or in JSON. */
const unstorable = new Set(['22021', '22P05'])

/** A text that is no number, date or id, or a number beyond its column: a made-up cursor holds such. */
const unreadable = new Set(['22P02', '22003', '22007', '22008'])

interface Refused {
  readonly sqlState: string
  readonly constraint: string
}

/** Turns what PostgreSQL refused into a sentence; anything else stays what it was. */
export function asDomainError(error: unknown): unknown {
  if (error instanceof DomainError) return error
  const refused = findRefusal(error)
  return refused ? refusalOf(refused, error) : error
}

/** The database cannot be reached, or not in time. */
export function databaseGone(cause: unknown): DomainError {
  const sentence = 'The database does not answer. Nothing was saved: try again in a moment.'
  return new DomainError('not-ready', sentence, [], { cause })
}

function refusalOf(refused: Refused, error: unknown): unknown {
  const { sqlState, constraint } = refused
  const known = Object.entries(refusals).find(([name]) => constraint.includes(name))?.[1]
  const options = { cause: error }
  if (known) return fieldError(...known, options)
  if (/^(08|57P|53)/.test(sqlState) || brokenConnections.has(sqlState)) {
    return databaseGone(error)
  }
  if (unstorable.has(sqlState)) {
    return new DomainError(
      'request-invalid',
      'A text holds a character that cannot be stored: type it anew.',
      [],
      options,
    )
  }
  if (unreadable.has(sqlState)) {
    return new DomainError(
      'request-invalid',
      'A value of the request cannot be read as what it stands for.',
      [],
      options,
    )
  }
  if (sqlState === '40P01' || sqlState === '40001') {
    return new DomainError(
      'not-ready',
      'Somebody else wrote at the same place. Nothing was saved: send it once more.',
      [],
      options,
    )
  }
  if (sqlState === '23505' && constraint.includes('_pkey')) {
    return fieldError(
      'id-already-used',
      'id',
      'This id already stands for another record: the first one stays.',
      options,
    )
  }
  if (sqlState === '23505') {
    const sentence = 'This name is already taken at this site: choose another.'
    return fieldError('name-already-used', fieldOf(constraint, 'key'), sentence, options)
  }
  if (sqlState === '23503') {
    const sentence = 'It names a record that is not there at this site.'
    return fieldError('not-found', fieldOf(constraint, 'fkey'), sentence, options)
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
  if (sqlState && (brokenConnections.has(sqlState) || /^(?!P[1-9])[0-9A-Z]{5}$/.test(sqlState))) {
    return { sqlState, constraint: constraintName(record) }
  }
  if (/^Connection terminated|is not queryable/.test(text(record['message']) ?? '')) {
    return { sqlState: '08006', constraint: '' }
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
