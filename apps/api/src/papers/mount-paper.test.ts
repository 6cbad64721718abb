import { describe, expect, it } from 'vitest'
import { codesIn, readPrinted } from '../../../../tests/support/printed.ts'
import { aFullRecord } from './a-full-record.ts'
import { mountPaper, type MountPaper } from './mount-paper.ts'

const address = 'https://book.example/harrow-point/mounts/01936b4e-7d60-7c31-9d4b-2f0a3c5e7b91'
const aPaper = (change: Partial<MountPaper> = {}): MountPaper => ({
  record: aFullRecord(),
  site: { name: 'Harrow Point', timeZone: 'America/Halifax' },
  place: { positionName: 'head shaft, drive end', machineTag: 'BE-204', areaName: 'Receiving pits', locating: true },
  greaseName: 'Skerry WR 2',
  photos: ['seat before', ''],
  correctedBy: { signedAt: '2026-11-24T09:00:00Z', signedBy: 'Tomas Wren', reason: 'Row B was read twice' },
  address,
  printedAt: new Date('2026-11-25T08:30:00Z'),
  ...change,
})
const printed = async (change: Partial<MountPaper> = {}) => await readPrinted(await mountPaper(aPaper(change)))

/** Every number and text in a value, with the name of its field; ids and instants have tests of their own. */
function leaves(value: unknown, name = ''): { name: string; value: number | string }[] {
  if (typeof value === 'number' || typeof value === 'string') return [{ name, value }]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, key))
}

describe('mountPaper(contents)', () => {
  it('prints every number of the record', async () => {
    const text = (await printed()).texts.join(' ')
    const { judgement, version: _version, ...record } = aFullRecord()
    const numbers = leaves(record).filter((leaf) => typeof leaf.value === 'number' && leaf.name !== 'step')
    const judged = leaves({ ...judgement, checks: judgement.checks.map(({ sentence }) => sentence) })
    const shown = [...numbers, ...judged.filter(({ value }) => typeof value === 'number')].map(({ value }) =>
      String(Math.round(Number(value) * 1000) / 1000),
    )
    // means and uncertainties in µm are rounded to a decimal, as everywhere in the book
    const missing = shown.filter((number) => !text.includes(number) && !text.includes(Number(number).toFixed(1)))
    expect(missing).toEqual([])
    expect(shown.length).toBeGreaterThan(60)
  })

  it('prints every text of the record, readings as they were typed', async () => {
    const text = (await printed()).texts.join(' ')
    const { judgement, createdAt: _createdAt, ...record } = aFullRecord()
    const coded = /^[0-9a-f-]{36}$|^\d{4}-\d\d-\d\d|^[A-D]$/
    const words = [
      ...leaves(record).filter(({ name }) => ['typedValue', 'designation', 'note', 'reason', 'tag'].includes(name)),
      ...leaves(record.details.kitCheck).filter(({ name }) => name.endsWith('Code') || name === 'kind'),
      ...leaves(judgement.checks.map(({ sentence, rule, name }) => [sentence, rule, name])),
      ...leaves(judgement.cautions),
    ]
      .map(({ value }) => String(value))
      .filter((word) => word !== '' && !coded.test(word))
    const people = ['Mara Lindqvist', 'Ines Okafor', 'Tomas Ferrand', 'Tomas Wren']
    const rest = ['0,150 mm', 'PTW-7731', 'No other bearing on the shelf', 'Skerry WR 2', '2 in the book: seat before']
    const isThere = (word: string): boolean => text.includes(word.replaceAll(/\s+/g, ' '))
    expect([...words, ...people, ...rest].filter((word) => !isThere(word))).toEqual([])
  })

  it.each([
    ['lines', 'a\n'.repeat(999)],
    ['one word', 'W'.repeat(2000)],
    ['words', 'grease '.repeat(285)],
  ])('cuts texts that no page holds, here the longest of %s, and says so by an ellipsis', async (_name, text) => {
    const record = aFullRecord()
    const [line] = record.details.kitCheck
    const kitCheck = Array.from({ length: 80 }, () => ({ ...line!, foundCode: text, plannedCode: text, reason: text }))
    const judgement = {
      ...record.judgement,
      band: { ...record.judgement.band!, source: { ...record.judgement.band!.source, title: text } },
    }
    const told = { note: text, checker: text, permitReference: text, gauge: text, judgement }
    const paper = await printed({ record: { ...record, ...told, details: { ...record.details, kitCheck } } })
    expect(paper.pages).toBeLessThan(150)
    expect(paper.texts.every((page, index) => page.includes(`page ${index + 1} of ${paper.pages}`))).toBe(true)
    expect(paper.texts.join(' ')).toContain('…')
    expect(paper.texts.join(' ')).toContain('Tomas Ferrand')
  })

  it("tells times by the plant's clock", async () => {
    const text = (await printed()).texts.join(' ')
    // Halifax is four hours behind UTC in November: 14:05, 16:40 and 15:10 UTC
    for (const time of ['22 Nov 2026, 10:05', '22 Nov 2026, 12:40', '22 Nov 2026, 11:10']) expect(text).toContain(time)
  })

  it('takes two pages of A4 for a record with everything in it, and names them', async () => {
    const paper = await printed()
    expect(paper.pages).toBe(2)
    expect(paper.sizeMm.map(Math.round)).toEqual([210, 297])
    expect(paper.texts.map((text) => /page (\d) of 2/.exec(text)?.[1])).toEqual(['1', '2'])
  })

  it('says on every page what comes first', async () => {
    for (const text of (await printed()).texts) expect(text).toMatch(/makers' manuals and licensed practice come first/)
  })

  it('leads back to the record by its QR code', async () => {
    expect(await codesIn(await (await printed()).picture(1, 150))).toEqual([address])
  })

  it('says DRAFT on every page of a draft, and on none of a signed record', async () => {
    const draft = await printed({ record: { ...aFullRecord(), signedAt: null, signedBy: null } })
    for (const text of draft.texts) expect(text).toContain('DRAFT')
    for (const text of (await printed()).texts) expect(text).not.toContain('DRAFT')
  })

  it('prints what a draft says of the bearing that comes out', async () => {
    const told = { cause: 'water at the seal', detection: 'noise', evidence: 'brown grease', observer: 'Ines Okafor' }
    const removal = { ...told, endKind: 'failed', modeClause: '5.1.2' } as const
    const paper = await printed({ record: { ...aFullRecord(), signedAt: null, signedBy: null, removal } })
    const text = paper.texts.join(' ')
    const said = ['failed', '5.1.2', ...Object.values(told)]
    expect(said.filter((words) => !text.includes(words))).toEqual([])
  })

  it('prints a record by feel without readings', async () => {
    const { judgement, ...record } = aFullRecord()
    const bare = { ...judgement, verdict: null, residual: null, benchMeanUm: null, mountedMeanUm: null }
    const byFeel = { ...record, method: 'by-feel' as const, readings: [], judgement: { ...bare, reductionUm: null } }
    const [first] = (await printed({ record: byFeel })).texts
    expect(first).toContain('Not judged')
    expect(first).toContain('No clearance was read: by feel.')
  })

  it('prints the letters and signs that people type', async () => {
    const note = 'Größe geprüft: Ω κ Ж ≥ 0,05 → gut, Ångström łódź ñ'
    const text = (await printed({ record: { ...aFullRecord(), note } })).texts.join(' ')
    expect(text).toContain(note)
  })

  it('goes on with further pages where much was written, and loses none of it', async () => {
    const note = Array.from({ length: 280 }, (_, index) => `w${index}`).join(' ')
    const reason = Array.from({ length: 280 }, (_, index) => `r${index}`).join(' ')
    const paper = await printed({ record: { ...aFullRecord(), note, outOfBandReason: reason } })
    const text = paper.texts.join(' ')
    expect(paper.pages).toBeGreaterThan(2)
    for (const word of ['w0 ', 'w279', 'r0 ', 'r279']) expect(text).toContain(word)
  })
})
