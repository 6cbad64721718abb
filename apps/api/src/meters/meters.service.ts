import type { correctMeterReading, MeterReading, NewMeterReading } from '@shaftbook/contract/meter-readings'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { fieldError, notFound } from '../domain-error.ts'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import { addReading, findNeighbours, findReading, holdMeter, isCorrected } from './meters.store.ts'
import { positionsOfMachine } from './place.ts'
import { replaceReading } from './replace-reading.ts'
import { totalHoursOf } from './total-hours.ts'
import { dayOf, doWork, momentOf, type Work, type Worker } from './work.ts'

type Correction = z.output<(typeof correctMeterReading)['body']>

/** Enters what a meter shows, or that it was exchanged. */
export function createReading(context: Context, worker: Worker, body: NewMeterReading): Promise<MeterReading> {
  return doWork(context, worker, async (work) => {
    if ((await receive(work.tx, 'create-meter-reading', body.id, body)) === 'repeat')
      return await reading(work, body.id)
    const readAt = momentOf(work, body.readAt, 'readAt')
    const meter = await holdMeter(work.tx, body.meterId)
    if (!meter) throw notFound('hour meter', 'meterId')
    const neighbours = await findNeighbours(work.tx, body.meterId, readAt)
    const tell = { path: 'shownHours', day: (at: Date) => dayOf(work, at) }
    const totalHours = totalHoursOf({ ...body, readAt }, neighbours, meter.rolloverAtHours, tell)
    await addReading(work.tx, { ...body, readAt, totalHours, readBy: work.personId })
    await refreshPositions(work.tx, await positionsOfMachine(work.tx, meter.machineId), work.now, 'meter read', readAt)
    return await reading(work, body.id)
  })
}

/** Corrects what a reading says by a further one of the same moment; bearings' stays that go by it follow. */
export function correctReading(
  context: Context,
  worker: Worker,
  wrongId: string,
  body: Correction,
): Promise<MeterReading> {
  return doWork(context, worker, async (work) => {
    const request = { ...body, correctsId: wrongId }
    if ((await receive(work.tx, 'correct-meter-reading', body.id, request)) === 'repeat')
      return await reading(work, body.id)
    const wrong = await reading(work, wrongId)
    const meter = await holdMeter(work.tx, wrong.meterId)
    if (!meter) throw notFound('hour meter', 'meterId')
    if (await isCorrected(work.tx, wrongId)) {
      throw fieldError('already-corrected', 'id', 'This reading was corrected already: correct the latest one.')
    }
    const readAt = new Date(wrong.readAt)
    if (wrong.kind === 'exchange') await checkNothingCounts(work, wrong, readAt)
    const right = { ...body, readAt, newMeterShowsHours: wrong.newMeterShowsHours, path: 'shownHours' }
    await replaceReading(work, { ...meter, id: wrong.meterId }, { ...wrong, readAt }, right)
    const positions = await positionsOfMachine(work.tx, meter.machineId)
    await refreshPositions(work.tx, positions, work.now, 'meter reading corrected', readAt)
    return await reading(work, body.id)
  })
}

/** Refuses to correct an exchange from which later readings count. */
async function checkNothingCounts(work: Work, exchange: MeterReading, readAt: Date): Promise<void> {
  const { after } = await findNeighbours(work.tx, exchange.meterId, readAt, exchange.id)
  if (!after) return
  const message = 'Later readings count from this exchange, so it stays as it is: ask the engineer.'
  throw fieldError('not-allowed-here', 'shownHours', message)
}

async function reading(work: Work, id: string): Promise<MeterReading> {
  const found = await findReading(work.tx, id)
  if (!found) throw notFound('meter reading')
  return found
}
