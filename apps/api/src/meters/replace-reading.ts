import { addReading, findNeighbours, moveStays } from './meters.store.ts'
import { totalHoursOf, type CountingReading, type Entry } from './total-hours.ts'
import { dayOf, type Work } from './work.ts'

export interface ReplacedMeter {
  readonly id: string
  readonly machineId: string
  readonly rolloverAtHours: number | null
}

export interface RightReading extends Entry {
  readonly id?: string
  readonly correctionReason: string
  /** The field of the request that a refusal names. */
  readonly path: string
}

/** Corrects a reading of a meter by a further one; bearings' stays that go by it follow. Answers the machine's hours (h). */
export async function replaceReading(
  work: Work,
  meter: ReplacedMeter,
  wrong: Pick<CountingReading, 'id' | 'kind' | 'readAt' | 'totalHours'>,
  { path, ...right }: RightReading,
): Promise<number> {
  const neighbours = await findNeighbours(work.tx, meter.id, right.readAt, wrong.id)
  const tell = { path, day: (at: Date) => dayOf(work, at) }
  const totalHours = totalHoursOf(right, neighbours, meter.rolloverAtHours, tell)
  const { kind, id: correctsId } = wrong
  await addReading(work.tx, { ...right, meterId: meter.id, kind, totalHours, readBy: work.personId, correctsId })
  const { machineId } = meter
  await moveStays(work.tx, { machineId, at: wrong.readAt, wrongHours: wrong.totalHours, hours: totalHours })
  return totalHours
}
