import { a4Sheet, rollSheet } from '@shaftbook/contract/label-sheet'
import { describe, expect, it } from 'vitest'
import { codesIn, readPrinted } from '../../../../tests/support/printed.ts'
import { positionLabels, type PositionLabel } from './position-labels.ts'

const madeAt = new Date('2026-11-25T08:30:00Z')
const aLabel = (number: number, change: Partial<PositionLabel> = {}): PositionLabel => ({
  tag: `BE-${number}-H-DE`,
  name: 'head shaft, drive end',
  machine: `BE-${number} Bucket elevator`,
  address: `https://book.example/harrow-point/at/BE-${number}-H-DE`,
  ...change,
})
const printed = async (...given: Parameters<typeof positionLabels>) => await readPrinted(await positionLabels(...given))

describe('positionLabels(labels, sheet, startAt, madeAt)', () => {
  it.each([
    [62, 29],
    [100, 50],
    [50, 25],
    [40, 60],
    [25, 15],
  ])('prints a label of %i × %i mm whose code is read from a picture of 300 dots an inch', async (width, height) => {
    const label = aLabel(7)
    const paper = await printed([label], rollSheet(width, height), 1, madeAt)
    expect(paper.pages).toBe(1)
    expect(paper.sizeMm.map((mm) => Math.round(mm * 10) / 10)).toEqual([width, height])
    expect(await codesIn(await paper.picture(1, 300))).toEqual([label.address])
    for (const word of [label.tag, label.name, label.machine])
      expect(paper.texts[0]?.replaceAll(' ', '')).toContain(word.replaceAll(' ', ''))
  })

  it('fills sheets of A4 from the first free label on, each code on its own label', async () => {
    const labels = Array.from({ length: 7 }, (_, index) => aLabel(index + 1))
    const sheet = a4Sheet({ columns: 2, rows: 4, leftMm: 8, topMm: 12, columnGapMm: 4, rowGapMm: 2 })
    const paper = await printed(labels, sheet, 4, madeAt)
    const addresses = labels.map(({ address }) => address)
    expect(paper.pages).toBe(2)
    expect(new Set(await codesIn(await paper.picture(1, 150)))).toEqual(new Set(addresses.slice(0, 5)))
    expect(new Set(await codesIn(await paper.picture(2, 150)))).toEqual(new Set(addresses.slice(5)))
  })

  it('prints the whole of long names, smaller', async () => {
    const label = aLabel(8, {
      tag: 'CONV-1204-INTERMEDIATE-NDE',
      name: 'non-drive end of the very long intermediate lay shaft with its torque limiter',
      machine: 'CV-1204 Inclined screw conveyor of the dryer exhaust dust collection',
    })
    const paper = await printed([label], rollSheet(62, 29), 1, madeAt)
    const text = paper.texts[0]?.replaceAll(' ', '')
    for (const word of [label.tag, label.name, label.machine]) expect(text).toContain(word.replaceAll(' ', ''))
  })
})
