import type { Page } from 'playwright-core'
import { beforeAll, describe, expect, it } from 'vitest'
import { demoSignIns } from '../../seeds/load-demo.ts'
import { heading } from '../support/at-the-screen.ts'
import { deviceText } from '../support/device-text.ts'
import { phone, signIn, useWiredBook } from '../support/open-book.ts'

const book = useWiredBook()
const mara = demoSignIns.find(({ role }) => role === 'technician')!

interface Place {
  id: string
  tag: string
  areaName: string
}
let places: Place[]

beforeAll(async () => {
  places = await book.sql<Place>(`
    select p.id, p.tag, a.name as "areaName" from position p
    join grease_plan plan on plan.site_id = p.site_id and plan.position_id = p.id and plan.ended_at is null
    join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
    join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
    join machine m on m.site_id = s.site_id and m.id = s.machine_id
    join area a on a.site_id = m.site_id and a.id = m.area_id
    where p.retired_at is null order by a.name, p.tag limit 8`)
})

/** A technician's phone on which the pages are laid down and the key has come. */
async function technicianAt(address = '/harrow-point/device'): Promise<Page> {
  await book.wire.mend()
  const page = await book.signedIn('technician', { viewport: phone, hasTouch: true, isMobile: true })
  await page.evaluate(async () => void (await navigator.serviceWorker.ready))
  await page.goto(address)
  return page
}

/** Opens the sheet of a greasing, cuts the line, and logs it with a dose and a note. */
async function greaseWithoutNetwork(page: Page, { id, tag }: Place, note: string): Promise<void> {
  await page.goto(`/harrow-point/greasing?log=${id}`)
  const sheet = page.getByRole('dialog', { name: `Log greasing of ${tag}` })
  await sheet.getByLabel('Dose').waitFor()
  await book.wire.cut()
  await sheet.getByLabel('Note').fill(note)
  await sheet.getByRole('button', { name: /^Log \d+ g$/ }).click()
  await page.getByText(`Greasing of ${tag} is kept on this device.`).waitFor()
}

async function greasingsNoted(note: string): Promise<number> {
  return (await book.sql('select id from greasing where note = $1', [note])).length
}

describe('a greasing that is written without a network', () => {
  it('survives a reload, waits in the outbox, and is in the book once when the network is back', async () => {
    const page = await technicianAt()
    const place = places[0]!
    await greaseWithoutNetwork(page, place, 'behind the cut line')
    await page.reload()
    await page.getByText('No network.', { exact: true }).waitFor()
    await page.getByRole('link', { name: 'This device' }).click()
    await heading(page, 'This device')
    const waiting = page.getByRole('list', { name: 'Records not sent yet' }).getByRole('listitem')
    await waiting.filter({ hasText: `Greasing of ${place.tag}` }).waitFor()
    expect(await greasingsNoted('behind the cut line')).toBe(0)

    await book.wire.mend()
    await page.getByRole('list', { name: 'Sent lately' }).getByText(`Greasing of ${place.tag}`).waitFor()
    expect(await greasingsNoted('behind the cut line')).toBe(1)
    await page.getByText('Everything that you wrote here is in the book.').waitFor()
  })

  it('is there once where the answer was lost on its way', async () => {
    const page = await technicianAt()
    const { id, tag } = places[1]!
    await page.goto(`/harrow-point/greasing?log=${id}`)
    const sheet = page.getByRole('dialog', { name: `Log greasing of ${tag}` })
    await sheet.getByLabel('Note').fill('answer lost')
    const lost = book.wire.loseNextAnswer(/^POST .*\/greasings$/)
    await sheet.getByRole('button', { name: /^Log \d+ g$/ }).click()
    expect(await lost).toMatchObject({ status: 201 })
    await page.goto('/harrow-point/device')
    await page.getByRole('list', { name: 'Sent lately' }).getByText(`Greasing of ${tag}`).waitFor()
    expect(await greasingsNoted('answer lost')).toBe(1)
  })
})

describe('a record that the service refuses', () => {
  it('says why, and is mended where it was made', async () => {
    const page = await technicianAt()
    const place = places[2]!
    await greaseWithoutNetwork(page, place, 'refused first')
    const setRole = (role: string) =>
      book.sql('update membership set role = $1 where person_id = (select id from person where email = $2)', [
        role,
        mara.email,
      ])
    await setRole('stores')
    await book.wire.mend()
    await page.getByRole('link', { name: 'This device' }).click()
    const row = page.getByRole('listitem').filter({ hasText: `Greasing of ${place.tag}` })
    await row.getByText('Refused').waitFor()
    await row.getByText('this needs one of').waitFor()
    await page.getByRole('link', { name: 'This device: 1 refused' }).waitFor()

    await setRole('technician')
    await page.reload()
    await row.getByRole('button', { name: /^Mend it/ }).click()
    const sheet = page.getByRole('dialog', { name: `Log greasing of ${place.tag}` })
    await sheet.getByText('What was typed here before is back.').waitFor()
    expect(await sheet.getByLabel('Note').inputValue()).toBe('refused first')
    await sheet.getByRole('button', { name: /^Log \d+ g$/ }).click()
    await page.getByText(/ g at .* is logged/).waitFor()
    expect(await greasingsNoted('refused first')).toBe(1)
  })

  it('can be thrown away after a question', async () => {
    const page = await technicianAt()
    const place = places[3]!
    await greaseWithoutNetwork(page, place, 'thrown away')
    await page.getByRole('link', { name: 'This device' }).click()
    await page.getByRole('button', { name: /^Throw away/ }).click()
    const question = page.getByRole('dialog', { name: `Throw away "Greasing of ${place.tag}"?` })
    await question.getByRole('button', { name: 'Throw away' }).click()
    await page.getByText('Nothing waits.').waitFor()
    await book.wire.mend()
    await page.getByText('No network.', { exact: true }).waitFor({ state: 'detached' })
    expect(await greasingsNoted('thrown away')).toBe(0)
  })
})

describe('signing out on a shared tablet without a network', () => {
  it('takes key and downloads off at once, ends the session later, and leaves the next person a name and a count', async () => {
    const page = await technicianAt()
    const place = places[4]!
    await page.getByLabel(place.areaName).check()
    await page.getByRole('listitem').filter({ hasText: place.areaName }).getByText('just now').waitFor()
    await greaseWithoutNetwork(page, place, 'sealed for Mara')
    expect(await deviceText(page)).toContain('"holder"')

    await page.getByRole('button', { name: /Theme, unit and sign-out/ }).click()
    await page.getByRole('button', { name: 'Sign out' }).click()
    const question = page.getByRole('dialog', { name: 'Sign out with 1 not sent?' })
    await question.getByRole('button', { name: 'Sign out' }).click()
    await page.getByText('You are signed out on this device.').waitFor()
    const left = await deviceText(page)
    expect(left).not.toContain('"holder"')
    expect(left).not.toContain(place.tag)
    expect(left).not.toContain('sealed for Mara')
    expect(left).toContain('["replies"]')

    await page.goto('/harrow-point/positions')
    await heading(page, 'Shaftbook')
    await book.wire.mend()
    await page.getByText('You are signed out on this device.').waitFor({ state: 'detached' })
    await signIn(page, 'stores')
    await page.goto('/harrow-point/device')
    await page.getByText(`${mara.name} has 1 record on this device that is not sent`).waitFor()
    expect(await page.getByText(place.tag).count()).toBe(0)
    expect(await greasingsNoted('sealed for Mara')).toBe(0)

    await page.getByRole('button', { name: /Theme, unit and sign-out/ }).click()
    await page.getByRole('button', { name: 'Sign out' }).click()
    await heading(page, 'Shaftbook')
    await signIn(page, 'technician')
    await page.goto('/harrow-point/device')
    await page.getByRole('list', { name: 'Sent lately' }).getByText(`Greasing of ${place.tag}`).waitFor()
    expect(await greasingsNoted('sealed for Mara')).toBe(1)
  })
})

describe('an area that is kept on the device', () => {
  it('is read without a network, from a start without one, as of when it was downloaded', async () => {
    const page = await technicianAt()
    const place = places[5]!
    await page.getByLabel(place.areaName).check()
    await page.getByRole('listitem').filter({ hasText: place.areaName }).getByText('just now').waitFor()
    await book.wire.cut()
    await page.goto('/harrow-point/positions')
    await page.getByText('From this device, as of').waitFor()
    await page.getByRole('searchbox', { name: 'Search' }).fill(place.tag)
    await page.getByRole('link', { name: place.tag }).first().click()
    await heading(page, place.tag)
    await page.goto(`/harrow-point/greasing`)
    await heading(page, 'Greasing')
    await page.getByText(place.tag).first().waitFor()
    await page.goto('/harrow-point/life')
    await page.getByText('is not kept on this device').first().waitFor()
    expect(await page.getByRole('link', { name: 'This device: No network' }).count()).toBe(1)
    await book.wire.mend()
  })
})
