import type { Locator, Page } from 'playwright-core'
import { beforeAll, describe, expect, it } from 'vitest'
import { findPosition, heading, patience } from '../support/at-the-screen.ts'
import { useOpenBook } from '../support/open-book.ts'

const book = useOpenBook()
let page: Page
beforeAll(async () => {
  page = await book.signedIn('engineer')
})

const preview = (): Locator => page.getByRole('region', { name: 'How the table is read' })
const take = (words: RegExp): Locator => page.getByRole('button', { name: words })

async function pasteTable(lines: readonly string[]): Promise<void> {
  await page.getByRole('button', { name: 'Paste a table' }).click()
  await page.getByRole('textbox', { name: 'The table' }).fill(lines.join('\n'))
}

async function nameTheChart(document: string, edition: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Maker' }).fill('Tarnbeck')
  await page.getByRole('textbox', { name: 'Document' }).fill(document)
  await page.getByRole('textbox', { name: 'Edition' }).fill(edition)
}

describe('pasting a chart', () => {
  const table = [
    'Bore d (mm)\tReduction (mm)\t\tResidual (mm)\t\t',
    '\tmin\tmax\tCN\tC3\tC4',
    'over 80 incl 100\t0,047\t0,062\t0,035\t0,050\t0,080',
    '100-120\tabout 50\t0,072\t0,050\t0,065\t0,100',
  ]

  it('shows each line with its faults, keeps nothing before it is said so, and takes what was mended', async () => {
    await page.goto('/harrow-point/setup/charts/new')
    await nameTheChart('Pasted sheet', '1')
    await pasteTable(table)
    const lines = preview().locator('tbody tr')
    await expect.poll(() => lines.count(), patience).toBe(2)
    expect(await lines.nth(0).innerText()).toContain('80 to 100 mm, 1:12: 47 to 62 µm')
    expect(await lines.nth(1).innerText()).toContain('Least reduction: “about 50” is not one number')
    expect(await take(/^Take this row/).isDisabled()).toBe(true)

    const mended = table.join('\n').replace('about 50', '0,052')
    await page.getByRole('textbox', { name: 'The table' }).fill(mended)
    await take(/^Take these 2 rows/).click()
    expect(await page.getByRole('textbox', { name: 'Least reduction, row 2' }).inputValue()).toBe('0.052')
    expect(await book.sql("select from maker_chart where document = 'Pasted sheet'")).toHaveLength(0)
  })

  it('names rows that overlap at the rows, and saves the chart once they meet', async () => {
    const over = page.getByRole('textbox', { name: 'Bore over, row 2' })
    await over.fill('90')
    await page.getByRole('button', { name: 'Enter the chart' }).click()
    await page.getByText('Row 2 (90 to 120 mm) overlaps row 1 (80 to 100 mm).').waitFor()
    expect(await over.getAttribute('aria-invalid')).toBe('true')
    await over.fill('100')
    await page.getByRole('button', { name: 'Enter the chart' }).click()
    await heading(page, 'Pasted sheet')
    const rows = await book.sql(
      `select r.over_mm, r.incl_mm, r.reduction_min_nm, r.reduction_max_nm, r.residual_min_c3_nm
       from maker_chart_row r join maker_chart c on c.site_id = r.site_id and c.id = r.chart_id
       where c.document = 'Pasted sheet' order by r.over_mm`,
    )
    expect(rows).toEqual([
      { over_mm: 80, incl_mm: 100, reduction_min_nm: 47_000, reduction_max_nm: 62_000, residual_min_c3_nm: 50_000 },
      { over_mm: 100, incl_mm: 120, reduction_min_nm: 52_000, reduction_max_nm: 72_000, residual_min_c3_nm: 65_000 },
    ])
  })

  it('takes columns for what a person says they are', async () => {
    await page.goto('/harrow-point/setup/charts/new')
    await pasteTable(['60;45;80-100', '75;50;100-120'])
    await preview().getByText('The range of bores runs upwards: 60 to 45 mm does not').waitFor()
    await preview().getByRole('combobox', { name: 'Column 1 is' }).selectOption('Most reduction')
    await page.getByText(/More than one column stands for: Most reduction/).waitFor()
    await preview().getByRole('combobox', { name: 'Column 2 is' }).selectOption('Least reduction')
    await preview().getByRole('combobox', { name: 'Column 3 is' }).selectOption('Bore, both ends')
    await preview().getByText('100 to 120 mm, 1:12: 50 to 75 µm').waitFor()
    expect(await take(/^Take these 2 rows/).isEnabled()).toBe(true)
  })
})

describe('a new edition of a chart', () => {
  interface Used {
    id: string
    document: string
    edition: string
    tag: string
    record: string
    judgement: unknown
    positions: number
  }

  /** A chart that a signed record of a position went by, and that position. */
  async function usedChart(): Promise<Used> {
    const [used] = await book.sql<Used>(`
      select c.id, c.document, c.edition, p.tag, r.id as record, r.judgement,
        (select count(*)::int from position q where q.site_id = c.site_id and q.maker_chart_id = c.id) as positions
      from maker_chart c
      join position p on p.site_id = c.site_id and p.maker_chart_id = c.id
      join bearing_type t on t.site_id = p.site_id and t.id = p.bearing_type_id and t.bore_mm = 100
      join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
      join mount_record r on r.site_id = f.site_id and r.id = f.mount_record_id
        and r.judgement #>> '{band,source,edition}' = c.edition
      where p.own_reduction_min_nm is null order by p.tag limit 1`)
    return used!
  }

  it('takes over its positions in one act, and leaves the records of the old one as they were', async () => {
    const used = await usedChart()
    await page.goto(`/harrow-point/setup/charts/${used.id}`)
    await page.getByText(/Signed mount records went by it, so its rows stay/).waitFor()
    await page.getByRole('link', { name: 'New edition of this chart' }).click()
    await heading(page, `New edition of ${used.document}`)
    await page.getByRole('textbox', { name: 'Edition' }).fill('next')
    await page.getByRole('textbox', { name: 'Page' }).fill('11')
    expect(await page.getByRole('textbox', { name: 'Up to, row 1' }).inputValue()).toBe('100')
    await page.getByRole('textbox', { name: 'Least reduction, row 1' }).fill('0,041')
    await page.getByRole('button', { name: 'Enter the chart' }).click()

    const part = page.getByRole('region', { name: `Still on edition ${used.edition}` })
    await part.getByText(`${used.positions} positions go by the edition before`).waitFor()
    await part.getByRole('button', { name: `Move all ${used.positions} positions to this edition` }).click()
    await page.getByRole('dialog').getByRole('button', { name: 'Move them' }).click()
    await page.getByText(`${used.positions} positions go by this chart`).waitFor()

    await findPosition(page, used.tag)
    await page.getByText(`edition next, page 11, row 80 < d ≤ 100 mm`).waitFor()
    const [record] = await book.sql<Used>('select judgement from mount_record where id = $1', [used.record])
    expect(record?.judgement).toEqual(used.judgement)
  })
})
