import type { MeterLine, MeterLineAnswer } from '@shaftbook/contract/meter-readings'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import type { Context } from '../context.ts'
import { keepReceipts, knownReceipts } from '../db/receipts.ts'
import { DomainError, fieldError } from '../domain-error.ts'
import { addReadings, findNamedMeters, hoursOfReadings, readingsAround, type NamedMeter } from './batch.store.ts'
import { judgeLines } from './judge-lines.ts'
import { holdMeter } from './meters.store.ts'
import { positionsOfMachine } from './place.ts'
import { dayOf, doWork, momentOf, type Work, type Worker } from './work.ts'

const endpoint = 'batch-meter-readings'

/**
 * Enters many readings. Each meter is its own act, in the same few statements however many lines tell of it, and its due
 * dates follow in the same transaction; a line that is refused keeps no other back, and one sent again is taken once.
 */
export async function takeBatch(context: Context, worker: Worker, lines: readonly MeterLine[]) {
  const { db } = context
  const { siteId } = worker.scope
  const meters = await db.readSite(worker.scope, (sql) => findNamedMeters(sql, siteId, lines))
  const answers = new Map<number, MeterLineAnswer>()
  const byMeter = new Map<string, { meter: NamedMeter; lines: Numbered[] }>()
  for (const [number, line] of lines.entries()) {
    const found = attempt(line, () => {
      if (lines.findIndex(({ id }) => id === line.id) !== number) throw twice()
      return meterOf(line, meters)
    })
    if ('outcome' in found) answers.set(number, found)
    else byMeter.set(found.id, { meter: found, lines: [...(byMeter.get(found.id)?.lines ?? []), { number, line }] })
  }
  // in one order, so that two batches at once never wait for each other's machines
  for (const { meter, lines: own } of [...byMeter.values()].toSorted((a, b) =>
    a.meter.machineId < b.meter.machineId ? -1 : 1,
  )) {
    const told = await doWork(context, worker, (work) => takeOfMeter(work, meter, own))
    for (const [number, answer] of told) answers.set(number, answer)
  }
  const inOrder = lines.flatMap((_line, number) => answers.get(number) ?? [])
  const taken = inOrder.filter(({ outcome }) => outcome === 'taken').length
  return { taken, refused: inOrder.length - taken, lines: inOrder }
}

interface Numbered {
  readonly number: number
  readonly line: MeterLine
}

async function takeOfMeter(
  work: Work,
  meter: NamedMeter,
  own: readonly Numbered[],
): Promise<Map<number, MeterLineAnswer>> {
  const { tx } = work
  const held = await holdMeter(tx, meter.id)
  const bodies = own.map(({ line }) => line)
  const known = await knownReceipts(tx, endpoint, bodies)
  const answers = new Map<number, MeterLineAnswer>()
  const fresh: { number: number; line: MeterLine; readAt: Date }[] = []
  for (const { number, line } of own) {
    if (known.get(line.id) === 'repeat') continue
    const readAt = attempt(line, () => {
      if (known.has(line.id)) throw twice()
      checkExchange(line)
      return momentOf(work, line.readAt, 'readAt')
    })
    if (readAt instanceof Date) fresh.push({ number, line, readAt })
    else answers.set(number, readAt)
  }
  const repeats = own.filter(({ line }) => known.get(line.id) === 'repeat')
  if (repeats.length > 0) {
    const hours = await hoursOfReadings(
      tx,
      repeats.map(({ line }) => line.id),
    )
    for (const { number, line } of repeats) answers.set(number, taken(line, hours.get(line.id) ?? null))
  }
  if (fresh.length === 0) return answers

  const times = fresh.map(({ readAt }) => readAt.getTime())
  const from = new Date(Math.min(...times))
  const around = await readingsAround(tx, meter.id, from, new Date(Math.max(...times)))
  const judged = judgeLines(fresh, around, held?.rolloverAtHours ?? null, (at) => dayOf(work, at))
  for (const { number, line, verdict } of judged) {
    answers.set(number, verdict instanceof DomainError ? refused(line, verdict) : taken(line, verdict))
  }
  const kept = judged.flatMap(({ line, readAt, verdict }) =>
    verdict instanceof DomainError ? [] : [{ ...line, readAt, totalHours: verdict, body: line }],
  )
  if (kept.length === 0) return answers
  await keepReceipts(
    tx,
    endpoint,
    kept.map(({ body }) => body),
  )
  await addReadings(tx, meter.id, work.personId, kept)
  await refreshPositions(tx, await positionsOfMachine(tx, meter.machineId), work.now, 'meter read', from)
  return answers
}

function meterOf(line: MeterLine, meters: readonly NamedMeter[]): NamedMeter {
  const { meterId, machineTag, meterName } = line
  const same = (told: string | undefined, text: string): boolean =>
    told === undefined || told.toLowerCase() === text.toLowerCase()
  if (meterId === undefined && machineTag === undefined && meterName === undefined) {
    throw fieldError(
      'not-allowed-here',
      'machineTag',
      'Say which meter this is: the tag of the machine, or the name of the meter.',
    )
  }
  const found = meters.filter(
    (meter) =>
      (meterId === undefined || meter.id === meterId) &&
      same(machineTag, meter.machineTag) &&
      same(meterName, meter.name),
  )
  const path = meterId === undefined ? (machineTag === undefined ? 'meterName' : 'machineTag') : 'meterId'
  const told = [machineTag, meterName].filter((text) => text !== undefined).join(', ') || 'this id'
  if (found.length > 1) {
    throw fieldError('not-allowed-here', path, `Several meters are called ${told}: name the machine too.`)
  }
  if (!found[0]) {
    throw fieldError(
      'not-found',
      path,
      `No hour meter is registered for ${told}: look at the spelling, or register it in Setup.`,
    )
  }
  return found[0]
}

function checkExchange({ kind, newMeterShowsHours }: MeterLine): void {
  if ((kind === 'exchange') === (newMeterShowsHours !== null)) return
  const message = 'Say where the new meter starts when the meter was exchanged, and only then.'
  throw fieldError('not-allowed-here', 'newMeterShowsHours', message)
}

function twice(): DomainError {
  return fieldError('id-already-used', 'id', 'This id was already sent with other contents: the first record stays.')
}

/** Does something for one line; what is refused becomes the line's answer. */
function attempt<T>(line: MeterLine, act: () => T): T | MeterLineAnswer {
  try {
    return act()
  } catch (error) {
    if (error instanceof DomainError) return refused(line, error)
    throw error
  }
}

function taken({ id }: MeterLine, totalHours: number | null): MeterLineAnswer {
  return { id, outcome: 'taken', totalHours, code: null, field: null, sentence: null }
}

function refused({ id }: MeterLine, error: DomainError): MeterLineAnswer {
  const [field] = error.fields
  const sentence = field?.message ?? error.message
  return { id, outcome: 'refused', totalHours: null, code: error.code, field: field?.path ?? null, sentence }
}
