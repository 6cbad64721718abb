import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { beforeAll, describe, expect, it } from 'vitest'
import { findPosition, hasFocus, patience } from '../support/at-the-screen.ts'
import { phone, useOpenBook } from '../support/open-book.ts'
import { aJpeg, aPhonePhoto } from '../support/pictures.ts'

const book = useOpenBook()
let page: Page
let place: { id: string; tag: string }

beforeAll(async () => {
  const [found] = await book.sql<{ id: string; tag: string }>(
    `select p.id, p.tag from position p join fitment f on f.site_id = p.site_id and f.position_id = p.id
     where f.removed_at is null order by p.tag limit 1`,
  )
  if (!found) throw new Error('Nothing is fitted in the demo.')
  place = found
  page = await book.signedIn('technician', { viewport: phone, hasTouch: true, isMobile: true })
})

const chosen = (name: string, buffer: Buffer) => ({ name, mimeType: 'image/jpeg', buffer })
const caption = (number: number) => page.getByLabel(`Caption of photo ${number}`)

async function choose(...files: ReturnType<typeof chosen>[]): Promise<void> {
  await page.locator('input[type=file][multiple]').setInputFiles(files)
}

describe('photos of a bearing that is taken out', () => {
  it('are chosen, captioned and thrown away, and outlast a reload in the middle', async () => {
    await findPosition(page, place.tag)
    await page.goto(`/harrow-point/positions/${place.id}/removal`)
    await page.getByRole('button', { name: 'Take a photo' }).waitFor()
    const camera = page.locator('input[type=file][capture]')
    expect(await camera.evaluate((input) => [input.getAttribute('accept'), input.getAttribute('capture')])).toEqual([
      'image/*',
      'environment',
    ])
    await camera.setInputFiles([chosen('taken.jpg', await aPhonePhoto())])
    await caption(1).fill('Spall in the load zone')
    await choose(
      chosen('wrong.jpg', await aJpeg({ colour: '#123456' })),
      chosen('large.jpg', await aJpeg({ widthPx: 4000, heightPx: 3000 })),
    )
    await caption(3).waitFor()
    await page.getByRole('button', { name: 'Remove photo 2' }).click()
    await caption(3).waitFor({ state: 'detached' })
    await expect.poll(() => keptFiles(), patience).toBe(2)
    await page.reload()
    await caption(2).waitFor()
    expect(await caption(1).inputValue()).toBe('Spall in the load zone')
    expect(await caption(3).count()).toBe(0)
  })

  /** How many photos lie on the device, unsent. */
  async function keptFiles(): Promise<number> {
    return await page.evaluate(async () => {
      const opened = indexedDB.open('shaftbook')
      await new Promise((resolve) => opened.addEventListener('success', resolve))
      const keys = opened.result.transaction('bytes').objectStore('bytes').getAllKeys()
      await new Promise((resolve) => keys.addEventListener('success', resolve))
      opened.result.close()
      return (keys.result as string[]).filter((key) => key.endsWith('/file')).length
    })
  }

  it('are refused on the spot where the file is no picture', async () => {
    await choose(chosen('notes.jpg', Buffer.from('<!doctype html>')))
    await page.getByRole('alert').getByText("notes.jpg can't be read as a picture here").waitFor()
    expect(await caption(3).count()).toBe(0)
  })

  it('are stored with the removal: small, upright, without the place where they were taken', async () => {
    await page.getByRole('radio', { name: /Removed, not failed/ }).check()
    const unread = page.getByLabel('Or why it was not read')
    if (await unread.isVisible()) await unread.fill('Display is dark')
    await page.getByRole('button', { name: 'Sign the removal' }).click()
    await page.getByRole('button', { name: 'Sign', exact: true }).click()
    const strip = page.getByRole('list', { name: `Photos at ${place.tag}` })
    await strip.getByRole('button', { name: 'Spall in the load zone' }).waitFor(patience)
    await expect.poll(() => strip.getByRole('button').count(), patience).toBe(2)
    const rows = await book.sql<{ id: string; caption: string; removal: string | null }>(
      `select ph.id, ph.caption, r.id as removal from photo ph
       left join removal r on r.site_id = ph.site_id and r.id = ph.subject_id where ph.position_id = $1 order by ph.taken_at`,
      [place.id],
    )
    expect(rows.map((row) => row.caption).toSorted()).toEqual(['', 'Spall in the load zone'])
    expect(new Set(rows.map((row) => row.removal)).size).toBe(1)
    expect(rows[0]?.removal).not.toBeNull()
    const sizes: unknown[] = []
    for (const { id, caption: text } of rows) {
      const reply = await page.request.get(`/api/v1/sites/harrow-point/photos/${id}/image`)
      const { width, height, exif } = await sharp(await reply.body()).metadata()
      sizes.push([text, width, height, exif])
    }
    expect(sizes).toEqual(
      expect.arrayContaining([
        ['Spall in the load zone', 480, 640, undefined],
        ['', 1600, 1200, undefined],
      ]),
    )
    expect(await keptFiles()).toBe(0)
  })

  it('are looked at large, one after the other, by keyboard, and Escape leads back', async () => {
    const strip = page.getByRole('list', { name: `Photos at ${place.tag}` })
    await strip.getByRole('button').first().focus()
    await page.keyboard.press('Enter')
    const viewer = page.getByRole('dialog')
    await viewer.getByRole('heading', { name: `Photo 1 of 2 at ${place.tag}` }).waitFor()
    await page.keyboard.press('ArrowRight')
    await viewer.getByRole('heading', { name: `Photo 2 of 2 at ${place.tag}` }).waitFor()
    const picture = viewer.getByRole('figure').locator('img')
    await expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.naturalWidth), patience).toBeGreaterThan(0)
    expect(await picture.getAttribute('alt')).not.toBe('')
    await page.keyboard.press('Escape')
    await viewer.waitFor({ state: 'detached' })
    expect(await hasFocus(strip.getByRole('button').nth(1))).toBe(true)
  })
})

describe('photos of a position itself', () => {
  it('are added on its page, outside any work, and withdrawn with a reason', async () => {
    await page.goto(`/harrow-point/positions/${place.id}`)
    await page.getByRole('button', { name: 'Add photos' }).click()
    await page.getByRole('button', { name: 'Add to the book' }).waitFor()
    await choose(chosen('plate.jpg', await aJpeg({ colour: '#665544' })))
    await caption(1).fill('Nameplate')
    await page.getByRole('button', { name: 'Add to the book' }).click()
    const tile = page.getByRole('list', { name: `Photos at ${place.tag}` }).getByRole('button', { name: 'Nameplate' })
    await tile.click(patience)
    await page.getByRole('button', { name: 'Withdraw this photo' }).click()
    await page.getByLabel('Why should it not be seen?').fill('Of another machine')
    await page.getByRole('button', { name: 'Withdraw', exact: true }).click()
    await page.getByText(/^Withdrawn by .*: Of another machine$/).waitFor(patience)
    await page.keyboard.press('Escape')
    await tile.getByText('Withdrawn').waitFor()
    const [photo] = await book.sql<{ id: string }>(`select id from photo where caption = 'Nameplate'`)
    const reply = await page.request.get(`/api/v1/sites/harrow-point/photos/${photo?.id}/image`)
    expect(reply.status()).toBe(404)
  })
})
