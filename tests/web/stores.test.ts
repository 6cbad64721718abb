import { createMount } from '@shaftbook/contract/mounts'
import type { Page } from 'playwright-core'
import { beforeAll, expect, it } from 'vitest'
import { findPosition, hasFocus, heading, mainPlace, patience } from '../support/at-the-screen.ts'
import { useOpenBook } from '../support/open-book.ts'

const book = useOpenBook()
let page: Page

beforeAll(async () => {
  page = await book.signedIn('stores')
})

/** Types into the one search of the stores, reached from the place in the frame. */
async function search(text: string): Promise<void> {
  await mainPlace(page, 'Stores').click()
  await heading(page, 'Stores')
  await page.keyboard.press('/')
  await page.keyboard.press('ControlOrMeta+a')
  await page.keyboard.type(text)
}

/** The rows of the table with this name, without its head, each as its words. */
async function rowsOf(name: string | RegExp): Promise<string[]> {
  const table = page.getByRole('table', { name })
  await table.waitFor()
  return (await table.getByRole('row').allInnerTexts()).slice(1)
}

it('finds the kit of a position by its tag; the pick list has every line with quantity and bin', async () => {
  const lines = await book.sql<{ tag: string; designation: string; quantity: number; bin: string | null }>(`
    select p.tag, part.designation, l.quantity, part.bin from position p
    join kit_line l on l.site_id = p.site_id and l.kit_id = p.kit_id
    join part on part.site_id = l.site_id and part.id = l.part_id
    where p.id = (select id from position where site_id = p.site_id and kit_id is not null and locating order by tag limit 1)`)
  expect(lines.length).toBeGreaterThan(4)
  const { tag } = lines[0]!

  await search(tag)
  await page.keyboard.press('Enter')
  await heading(page, `Kit for ${tag}`)
  const rows = await rowsOf(`What goes on at ${tag}`)
  expect(rows).toHaveLength(lines.length)
  const isIn = (row: string, { designation, quantity, bin }: (typeof lines)[number]): boolean =>
    [designation, `${quantity} `, bin ?? 'no bin'].every((part) => row.includes(part))
  expect(lines.filter((line) => rows.filter((row) => isIn(row, line)).length !== 1)).toEqual([])
})

it('finds the positions that a sleeve fits, by arrow keys from the same search', async () => {
  const uses = await book.sql<{ designation: string; partId: string; tag: string }>(`
    with sleeve as (
      select part.site_id, part.id, part.designation from part
      join kit_line l on l.site_id = part.site_id and l.part_id = part.id
      join position p on p.site_id = l.site_id and p.kit_id = l.kit_id
      where part.kind = 'sleeve' group by 1, 2, 3 having count(distinct p.id) between 5 and 15
      order by part.designation limit 1)
    select distinct sleeve.designation, sleeve.id as "partId", p.tag from sleeve
    join kit_line l on l.site_id = sleeve.site_id and l.part_id = sleeve.id
    join position p on p.site_id = l.site_id and p.kit_id = l.kit_id order by p.tag`)
  const { designation } = uses[0]!

  await search(designation.slice(0, -1))
  const hit = page.getByRole('list', { name: 'Parts: where they fit' }).getByRole('link', { name: designation })
  await hit.waitFor()
  for (let pressed = 0; pressed < 60 && !(await hasFocus(hit)); pressed += 1) await page.keyboard.press('ArrowDown')
  expect(await hasFocus(hit)).toBe(true)
  await page.keyboard.press('Enter')
  await heading(page, designation)
  const rows = await rowsOf(`Positions that ${designation} fits`)
  const shown = rows.map((row) => row.split('\t')[0]?.trim())
  expect(shown).toHaveLength(uses.length)
  expect(new Set(shown)).toEqual(new Set(uses.map(({ tag }) => tag)))
})

it('opens a sleeve at once when its code is typed in full', async () => {
  const [sleeve] = await book.sql<{ designation: string }>(`
    select designation from part where kind = 'sleeve' group by 1 having count(*) = 1 order by 1 limit 1`)
  await search(sleeve!.designation)
  await page.keyboard.press('Enter')
  await heading(page, sleeve!.designation)
  expect(new URL(page.url()).pathname).toMatch(/\/stores\/parts\//)
})

it('enters a part, which the search then finds by its number; the same number a second time is refused at its field', async () => {
  const enter = async (number: string, code: string): Promise<void> => {
    await mainPlace(page, 'Stores').click()
    await page.getByRole('navigation', { name: 'Stores' }).getByRole('link', { name: 'Parts' }).click()
    await page.getByRole('link', { name: 'Enter a part' }).click()
    await heading(page, 'Enter a part')
    await page.getByLabel('Number').fill(number)
    await page.getByLabel('Code').fill(code)
    await page.getByRole('combobox', { name: 'Kind' }).click()
    await page.getByRole('option', { name: 'sleeve', exact: true }).click()
    await page.getByLabel('Bin').fill('Q-07')
    await page.getByLabel('Bin').press('Enter')
  }
  await enter('HP-90001', 'H9999')
  await heading(page, 'H9999')
  await page.getByText('It stands in no kit of a position').waitFor()

  await search('HP-90001')
  await page.keyboard.press('Enter')
  await heading(page, 'H9999')
  await page.getByText('Q-07').waitFor()

  await enter('HP-90001', 'H9998')
  await expect.poll(() => page.getByLabel('Number').getAttribute('aria-invalid'), patience).toBe('true')
  expect(await page.getByLabel('Code').inputValue()).toBe('H9998')
  await page.getByRole('link', { name: 'Go back' }).click()
  await page.getByRole('dialog', { name: 'Leave this page?' }).getByRole('button', { name: 'Leave' }).click()
  await heading(page, 'Parts')
})

it('is not offered work at the shaft, and the service refuses it too', async () => {
  const [place] = await book.sql<{ id: string; tag: string }>(`
    select p.id, p.tag from position p join fitment f on f.site_id = p.site_id and f.position_id = p.id
    where f.removed_at is null order by p.tag limit 1`)
  await findPosition(page, place!.tag)
  await page.getByRole('region', { name: `Life of ${place!.tag}` }).waitFor()
  expect(await page.getByRole('link', { name: /^Log / }).count()).toBe(0)

  await page.goto(`/harrow-point/positions/${place!.id}/remount`)
  await heading(page, 'Mounts are logged by the people at the shaft')
  const answer = await page.evaluate(
    async (path) => {
      const headers = { 'content-type': 'application/json' }
      const reply = await fetch(path, { method: 'POST', headers, body: '{}' })
      return { status: reply.status, code: ((await reply.json()) as { code: string }).code }
    },
    createMount.path.replace(':site', 'harrow-point'),
  )
  expect(answer).toEqual({ status: 403, code: 'role-not-allowed' })
})
