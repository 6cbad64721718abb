import type { GreasingRow } from '../builders/position-rows.ts'
import type { Random } from '../random.ts'
import type { Book } from './book.ts'

const hour = 3_600_000

type Usual = GreasingRow & { doseG: number }
/** A regreasing with about the planned dose. */
function isUsual(greasing: GreasingRow): greasing is Usual {
  const { kind, doseG, plannedDoseG } = greasing
  return kind === 'regreasing' && doseG !== null && plannedDoseG !== null && Math.abs(doseG / plannedDoseG - 1) < 0.2
}

/**
 * Slips of the pen that were put right by a further record: doses written ten times too large, a greasing written down
 * twice, a checker left out. The record that counts is the correction.
 */
export function correctSome(book: Book, random: Random, signedBy: string): void {
  const kept = book.greasings.filter(isUsual)
  if (kept.length < 10) return
  for (const place of [0.2, 0.55, 0.8]) {
    correctDose(book, random, kept[Math.floor(place * kept.length)] as Usual, signedBy)
  }
  withdraw(book, random, kept[Math.floor(0.4 * kept.length)] as GreasingRow, signedBy)
  correctFitter(book, random, signedBy)
}

function correctDose(book: Book, random: Random, greasing: Usual, signedBy: string): void {
  const at = new Date(greasing.greasedAt.getTime() + 3 * hour)
  book.greasings.push({
    ...greasing,
    id: random.uuidAt(at),
    signedAt: at,
    createdAt: at,
    signedBy,
    correctsId: greasing.id,
    correctionReason: 'The dose was written ten times too large',
  })
  greasing.doseG *= 10
}

/** The same greasing once more, an hour later, and taken back. */
function withdraw(book: Book, random: Random, greasing: GreasingRow, signedBy: string): void {
  const at = new Date(greasing.greasedAt.getTime() + hour)
  const twice = { ...greasing, id: random.uuidAt(at), greasedAt: at, signedAt: at, createdAt: at }
  const wrong: GreasingRow = { ...twice }
  const later = new Date(at.getTime() + hour)
  book.greasings.push(wrong, {
    ...twice,
    id: random.uuidAt(later),
    plannedDoseG: null,
    signedAt: later,
    createdAt: later,
    signedBy,
    correctsId: wrong.id,
    correctionReason: 'Written down twice',
    withdrawn: true,
  })
}

function correctFitter(book: Book, random: Random, signedBy: string): void {
  const wrong = book.mountRecords.find(({ verdict }) => verdict === 'inside')
  const signing = book.signings.find(({ mountRecordId }) => mountRecordId === wrong?.id)
  const records = book.fitmentRecords.find(({ mountRecordId }) => mountRecordId === wrong?.id)
  if (!wrong || !signing || !records) return
  const at = new Date(wrong.mountedAt.getTime() + 20 * hour)
  const right = {
    ...wrong,
    id: random.uuidAt(at),
    correctsId: wrong.id,
    correctionReason: 'The checker was left out',
    checker: wrong.checker ?? 'Tomas Wren',
    createdBy: signedBy,
    createdAt: at,
  }
  wrong.checker = null
  book.mountRecords.push(right)
  const readings = book.mountReadings.filter(({ mountRecordId }) => mountRecordId === wrong.id)
  book.mountReadings.push(
    ...readings.map((reading) => ({ ...reading, id: random.uuidAt(at), mountRecordId: right.id })),
  )
  book.signings.push({ ...signing, mountRecordId: right.id, signedAt: at, signedBy })
  records.mountRecordId = right.id
}
