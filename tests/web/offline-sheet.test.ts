import { appendFileSync, cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it, onTestFinished } from 'vitest'
import { webFolder } from '../../apps/ops/src/build-web.ts'
import { heading } from '../support/at-the-screen.ts'
import { deviceText } from '../support/device-text.ts'
import {
  askToSign,
  benchUmAt,
  fillSheet,
  goToStep,
  judgedPlaces,
  mountedEarlier,
  onStep,
  signSheet,
  type JudgedPlace,
} from '../support/mount-sheet.ts'
import { phone, signIn, useWiredBook } from '../support/open-book.ts'
import { aPhonePhoto } from '../support/pictures.ts'
import { Wire } from '../support/wire.ts'

const ownWebFolder = mkdtempSync(join(tmpdir(), 'shaftbook-web-'))
cpSync(webFolder, ownWebFolder, { recursive: true })
const book = useWiredBook({ webDir: ownWebFolder })
let places: JudgedPlace[]

beforeAll(async () => {
  places = await judgedPlaces(book)
})
afterEach(() => book.wire.mend())
afterAll(() => rmSync(ownWebFolder, { recursive: true }))

const touchPhone = { viewport: phone, hasTouch: true, isMobile: true }

/** A technician's phone with the pages laid down and the areas of the site taken along. */
async function technician(): Promise<Page> {
  const page = await book.signedIn('technician', touchPhone)
  await page.evaluate(async () => void (await navigator.serviceWorker.ready))
  return page
}

async function takeAlong(page: Page, { id }: JudgedPlace): Promise<void> {
  const [area] = await book.sql<{ name: string }>(
    `select a.name from area a join machine m on m.site_id = a.site_id and m.area_id = a.id
     join shaft s on s.site_id = m.site_id and s.machine_id = m.id
     join position p on p.site_id = s.site_id and p.shaft_id = s.id where p.id = $1`,
    [id],
  )
  await page.goto('/harrow-point/device')
  await page.getByLabel(area!.name).check()
  await page.getByRole('listitem').filter({ hasText: area!.name }).getByText('just now').waitFor()
}

/** What the QR code on the machine leads to, and from there to the sheet. */
async function openFromLabel(page: Page, { id, tag }: JudgedPlace): Promise<void> {
  await page.goto(`/harrow-point/at/${id}`)
  await heading(page, tag)
  await page.getByRole('link', { name: 'Start a mount' }).click()
  await onStep(page, 'Make safe')
}

/** A mount that ends inside its band. */
function workAt(place: JudgedPlace, serial: string) {
  const benchUm = benchUmAt(place)
  return { reason: 'Planned change', serial, benchUm, mountedUm: benchUm - place.bandMinUm - 5 }
}

/** Takes a photo of the bearing that comes out and goes back to where it was. */
async function photographOldBearing(page: Page, caption: string): Promise<void> {
  await goToStep(page, 'Strip and look')
  const buffer = await aPhonePhoto()
  await page.locator('input[type=file][capture]').setInputFiles([{ name: 'p.jpg', mimeType: 'image/jpeg', buffer }])
  await page.getByLabel('Caption of photo 1').fill(caption)
  await goToStep(page, 'Drive up')
}

async function signWithoutNetwork(page: Page, tag: string): Promise<void> {
  await askToSign(page, tag)
  await page.getByText(`The mount at ${tag}, signed, is kept on this device`).waitFor()
}

/** Waits until the device has nothing more to send. */
async function everythingSent(page: Page, tag: string): Promise<void> {
  await page.goto('/harrow-point/device')
  await page.getByRole('list', { name: 'Sent lately' }).getByText(`Mount at ${tag}`).waitFor()
  await page.getByText('Everything that you wrote here is in the book.').waitFor()
}

/** The signed records of a serial number, each with its photos. */
async function recordsOf(serial: string): Promise<{ verdict: string; captions: string[] }[]> {
  return await book.sql(
    `select m.verdict, array(select caption from photo where photo.site_id = m.site_id and photo.subject_id = m.id) as captions
     from mount_record m join bearing b on b.site_id = m.site_id and b.id = m.bearing_id
     where b.serial = $1 and m.signed_at is not null`,
    [serial],
  )
}

describe('a whole sheet without a network', () => {
  it('from the label to the signature, with a reload in the middle, is one record with its photo once there is a network', async () => {
    const place = places[0]!
    const page = await technician()
    await takeAlong(page, place)
    await book.wire.cut()
    await openFromLabel(page, place)
    await fillSheet(page, {
      ...workAt(place, 'W-2001'),
      halfway: async () => {
        await photographOldBearing(page, 'Spall at the load side')
        await page.reload()
        await page.getByText('What was typed here before is back.').waitFor()
        await onStep(page, 'Drive up')
      },
    })
    await signWithoutNetwork(page, place.tag)
    expect(await recordsOf('W-2001')).toEqual([])

    await book.wire.mend()
    await everythingSent(page, place.tag)
    expect(await recordsOf('W-2001')).toEqual([{ verdict: 'inside', captions: ['Spall at the load side'] }])
  })
})

describe('a service that is killed between request and answer', () => {
  it('has the photo and the record once, when it is up again', async () => {
    const place = places[1]!
    const page = await technician()
    await openFromLabel(page, place)
    await fillSheet(page, { ...workAt(place, 'W-2002'), halfway: () => photographOldBearing(page, 'Cage is broken') })
    const photo = book.wire.loseNextAnswer(/^(POST|PUT) .*photos/)
    const record = book.wire.loseNextAnswer(/^POST .*\/mount-records$/, { meanwhile: () => book.service.kill() })
    await askToSign(page, place.tag)
    expect(await photo).toMatchObject({ status: 201 })
    expect(await record).toMatchObject({ status: 201 })
    await book.service.start()
    await everythingSent(page, place.tag)
    expect(await recordsOf('W-2002')).toEqual([{ verdict: 'inside', captions: ['Cage is broken'] }])
  })
})

describe('two devices on one position', () => {
  it('the second is told in words, has everything that was typed, and signs after a look at the book of today', async () => {
    const place = places[2]!
    const { tag } = place
    const second = await technician()
    await openFromLabel(second, place)
    await fillSheet(second, workAt(place, 'W-2004'))
    await book.wire.cut()
    await signWithoutNetwork(second, tag)

    const other = new Wire(book.service.url)
    await other.open()
    onTestFinished(() => other.close())
    const first = await book.signedIn('engineer', { ...touchPhone, baseURL: other.url })
    await openFromLabel(first, place)
    await fillSheet(first, workAt(place, 'W-2003'))
    await mountedEarlier(first, 60)
    await signSheet(first, tag)

    await book.wire.mend()
    await second.goto('/harrow-point/device')
    const refused = second.getByRole('listitem').filter({ hasText: `Mount at ${tag}` })
    await refused.getByText(`${tag} has changed since this sheet was begun`).first().waitFor()
    expect(await recordsOf('W-2004')).toEqual([])

    await refused.getByRole('button', { name: /^Mend it/ }).click()
    await second.getByRole('button', { name: 'Open it again' }).click()
    await second.getByRole('button', { name: "Look again by today's book" }).click()
    await onStep(second, 'Strip and look')
    expect(await second.getByLabel('What was found').inputValue()).toBe('Grease grey, rings clean')
    await second.getByRole('group', { name: 'How did it end?' }).getByLabel('Removed, not failed').check()
    await goToStep(second, 'Bearing and bench clearance')
    expect(await second.getByLabel('Serial number').inputValue()).toBe('W-2004')
    await goToStep(second, 'Sign')
    await signSheet(second, tag)
    expect(await recordsOf('W-2003')).toHaveLength(1)
    expect(await recordsOf('W-2004')).toHaveLength(1)
  })
})

describe('a shared tablet', () => {
  it('shows the next person nothing of a sheet that waits or is half filled in; its writer signs in again and it is sent', async () => {
    const [waiting, half] = [places[3]!, places[4]!]
    const page = await technician()
    await openFromLabel(page, half)
    await page.getByLabel('Why is a bearing fitted?').fill('Half typed and secret')
    await openFromLabel(page, waiting)
    await fillSheet(page, workAt(waiting, 'W-2005'))
    await book.wire.cut()
    await signWithoutNetwork(page, waiting.tag)
    await page.getByRole('button', { name: /Theme, unit and sign-out/ }).click()
    await page.getByRole('button', { name: 'Sign out' }).click()
    const question = page.getByRole('dialog', { name: 'Sign out with 1 not sent?' })
    await question.getByRole('button', { name: 'Sign out' }).click()
    await page.getByText('You are signed out on this device.').waitFor()

    const secrets = ['W-2005', 'Half typed and secret', 'Grease grey', waiting.tag, half.tag]
    const left = await deviceText(page)
    expect(secrets.filter((secret) => left.includes(secret))).toEqual([])

    await book.wire.mend()
    await signIn(page, 'stores')
    await page.goto('/harrow-point/device')
    await page.getByRole('list', { name: 'Records of other people' }).getByRole('listitem').waitFor()
    const seen = await page.locator('body').innerText()
    expect(secrets.filter((secret) => seen.includes(secret))).toEqual([])
    expect(await recordsOf('W-2005')).toEqual([])

    await page.getByRole('button', { name: /Theme, unit and sign-out/ }).click()
    await page.getByRole('button', { name: 'Sign out' }).click()
    await heading(page, 'Shaftbook')
    await signIn(page, 'technician')
    await everythingSent(page, waiting.tag)
    expect(await recordsOf('W-2005')).toHaveLength(1)
    await page.getByRole('list', { name: 'Unfinished here' }).getByRole('link').click()
    await page.getByText('What was typed here before is back.').waitFor()
    expect(await page.getByLabel('Why is a bearing fitted?').inputValue()).toBe('Half typed and secret')
  })
})

describe('a book that changed while the sheet was away from the network', () => {
  it.each([
    {
      what: 'band',
      at: 5,
      change: `update position set own_reduction_min_nm = 20000, own_reduction_max_nm = 30000, own_band_source = 'Drawing 7'
               where id = $1`,
      says: /^The band at .* today, this sheet was judged by/,
      step: 'Drive up',
    },
    {
      what: 'kit',
      at: 6,
      change: 'update kit set version = version + 1 where id = (select kit_id from position where id = $1)',
      says: /^The kit at .* today, this sheet was filled by/,
      step: 'Kit check',
    },
  ])('a $what of another kind is not signed over: a person looks again', async ({ at, change, says, step, what }) => {
    const place = places[at]!
    const page = await technician()
    await openFromLabel(page, place)
    await fillSheet(page, workAt(place, `W-${what}`))
    await book.wire.cut()
    await signWithoutNetwork(page, place.tag)
    await book.sql(change, [place.id])
    await book.wire.mend()

    await page.goto('/harrow-point/device')
    const refused = page.getByRole('listitem').filter({ hasText: `Mount at ${place.tag}` })
    await refused.getByText(says).waitFor()
    await refused.getByRole('button', { name: /^Mend it/ }).click()
    await page.getByRole('button', { name: 'Open it again' }).click()
    await page.getByRole('button', { name: "Look again by today's book" }).click()
    await onStep(page, step)
    await goToStep(page, 'Bearing and bench clearance')
    expect(await page.getByLabel('Serial number').inputValue()).toBe(`W-${what}`)
    expect(await recordsOf(`W-${what}`)).toEqual([])
  })
})

describe('a newer version of the dashboard', () => {
  it('waits under a half-filled sheet until it is taken, and the sheet is there afterwards', async () => {
    const page = await technician()
    await openFromLabel(page, places[7]!)
    await page.getByLabel('Why is a bearing fitted?').fill('Typed before the update')
    await page.evaluate(() => Object.assign(globalThis, { notReloaded: true }))
    appendFileSync(join(ownWebFolder, 'sw.js'), '\n// a newer version\n')
    await page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()))
    const offer = page.getByRole('status').filter({ hasText: 'A newer version of Shaftbook is on this device.' })
    await offer.waitFor()
    expect(await page.getByLabel('Why is a bearing fitted?').inputValue()).toBe('Typed before the update')
    expect(await page.evaluate(() => 'notReloaded' in globalThis)).toBe(true)

    await offer.getByRole('button', { name: 'Start it now' }).click()
    await page.getByText('What was typed here before is back.').waitFor()
    expect(await page.getByLabel('Why is a bearing fitted?').inputValue()).toBe('Typed before the update')
    expect(await page.evaluate(() => 'notReloaded' in globalThis)).toBe(false)
  })
})
