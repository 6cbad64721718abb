import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { heading } from '../support/at-the-screen.ts'
import { phone, signIn, useWiredBook } from '../support/open-book.ts'

const book = useWiredBook()

async function technicianAt(address: string): Promise<Page> {
  const page = await book.signedIn('technician', { viewport: phone, hasTouch: true, isMobile: true })
  await page.evaluate(async () => void (await navigator.serviceWorker.ready))
  await page.goto(address)
  return page
}

async function askToSignOut(page: Page): Promise<void> {
  await page.getByRole('button', { name: /Theme, unit and sign-out/ }).click()
  await page.getByRole('button', { name: 'Sign out' }).click()
}

describe('a record that was refused while the same form is half filled in again', () => {
  it('waits until what is half filled in is sent or thrown away: neither is lost for the other', async () => {
    const page = await technicianAt('/harrow-point/greasing')
    const [place] = await book.sql<{ id: string; tag: string }>(`
      select p.id, p.tag from position p
      join grease_plan plan on plan.site_id = p.site_id and plan.position_id = p.id and plan.ended_at is null
      where p.retired_at is null order by p.tag limit 1`)
    const sheet = page.getByRole('dialog', { name: `Log greasing of ${place!.tag}` })
    const note = sheet.getByLabel('Note')
    const open = async (): Promise<void> => {
      await page.goto(`/harrow-point/greasing?log=${place!.id}`)
      await note.waitFor()
    }
    const setRole = (role: string) =>
      book.sql(
        "update membership set role = $1 where role <> 'manager' and person_id in (select id from person where email like 'mara@%')",
        [role],
      )
    await open()
    await note.fill('the first one')
    await setRole('stores')
    await book.wire.cut()
    await sheet.getByRole('button', { name: /^Log \d+ g$/ }).click()
    await page.getByText(`Greasing of ${place!.tag} is kept on this device.`).waitFor()
    await book.wire.mend()
    await page.getByRole('link', { name: 'This device: 1 refused' }).waitFor()
    await setRole('technician')

    await page.reload()
    await open()
    await note.fill('the second one')
    await page.goto('/harrow-point/device')
    const refused = page.getByRole('list', { name: 'Records not sent yet' }).getByRole('listitem')
    await refused.getByRole('button', { name: /^Mend it/ }).click()
    await page.getByText(/is half filled in here: send that one or throw it away first/).waitFor()
    await refused.getByText('Refused').waitFor()
    await open()
    expect(await note.inputValue()).toBe('the second one')

    await page.goto('/harrow-point/device')
    const unfinished = page.getByRole('list', { name: 'Unfinished here' }).getByRole('listitem')
    await unfinished.getByRole('button', { name: /^Throw away/ }).click()
    await page.getByRole('dialog').getByRole('button', { name: 'Throw away' }).click()
    await page.getByText('Nothing is half filled in.').waitFor()
    await refused.getByRole('button', { name: /^Mend it/ }).click()
    await note.waitFor()
    expect(await note.inputValue()).toBe('the first one')
  })
})

describe('signing out while the service is slow to answer', () => {
  it('leaves the pages at once, and never ends the session of whoever signs in next', async () => {
    const page = await technicianAt('/harrow-point/device')
    let answer: () => void = () => undefined
    const held = new Promise<void>((resolve) => (answer = resolve))
    await page.route('**/api/v1/session', async (route) => {
      if (route.request().method() !== 'DELETE') return await route.continue()
      await held
      const problem = { type: 'urn:x', title: 'Busy', status: 503, code: 'not-ready', detail: 'The service is busy.' }
      await route.fulfill({ status: 503, contentType: 'application/problem+json', body: JSON.stringify(problem) })
    })
    await askToSignOut(page)
    await heading(page, 'Shaftbook')
    answer()
    await signIn(page, 'stores')
    await page.unroute('**/api/v1/session')
    await page.goto('/harrow-point/device')
    await heading(page, 'This device')
    await page.reload()
    await heading(page, 'This device')
    expect(new URL(page.url()).pathname).toBe('/harrow-point/device')
  })
})
