import { describe, expect, it } from 'vitest'
import { demoSignIns } from '../../seeds/load-demo.ts'
import { flagCount, heading, mainPlace } from '../support/at-the-screen.ts'
import { desk, useOpenBook } from '../support/open-book.ts'

const book = useOpenBook()
const engineer = demoSignIns.find(({ role }) => role === 'engineer')!

describe('a person of two sites', () => {
  it('switches the site and sees only what belongs to it', async () => {
    const page = await book.signedIn('manager')
    const tagsOf = (site: string): Promise<{ tag: string }[]> =>
      book.sql('select tag from position order by tag', [], site)
    const [here, there] = await Promise.all([tagsOf('harrow-point'), tagsOf('sallow-quay')])
    const [flags] = await book.sql<{ open: string }>(
      `select count(*) as open from flag join site on site.id = flag.site_id
       where cleared_at is null and (put_off_until is null or put_off_until <= (now() at time zone site.time_zone)::date)`,
    )
    await heading(page, 'Flags')
    expect(await flagCount(page)).toBe(Number(flags!.open))

    await page.getByRole('button', { name: 'Site: Harrow Point' }).click()
    await page.getByRole('dialog', { name: 'Change site' }).getByRole('button', { name: 'Sallow Quay' }).click()
    await page.getByRole('button', { name: 'Site: Sallow Quay' }).waitFor()
    await heading(page, 'Flags')
    const list = page.getByRole('list', { name: 'Flags, most pressing first' }).getByRole('listitem')
    await list.first().waitFor()
    const named = (await list.allInnerTexts()).map((flag) => /[A-Z]{2}\d\d-[A-Z]{2}-[A-Z]/.exec(flag)?.[0])
    expect(named).toHaveLength(2)
    expect(new Set(named)).toEqual(new Set(['SQ01-HD-A', 'SQ01-HD-B']))

    await mainPlace(page, 'Positions').click()
    await page.getByRole('navigation', { name: 'Positions as' }).getByRole('link', { name: 'Table' }).click()
    const rows = page.getByRole('table', { name: 'Positions' }).getByRole('row')
    await rows.nth(1).waitFor()
    expect((await rows.allInnerTexts()).slice(1).map((row) => row.split('\t')[0]?.trim())).toEqual(
      there.map(({ tag }) => tag),
    )
    await page.getByRole('searchbox', { name: 'Search' }).fill(here[0]!.tag)
    await page.getByText('No position matches').waitFor()
    await page.context().close()
  })

  it('is told that a record is not there at the address of the other site', async () => {
    const page = await book.signedIn('manager')
    const [there] = await book.sql<{ position: string; mount: string; part: string }>(`
      select (select position_id from fitment where mount_record_id is not null limit 1) as position,
        (select mount_record_id from fitment where mount_record_id is not null limit 1) as mount,
        (select id from part limit 1) as part`)
    for (const address of [
      `positions/${there!.position}`,
      `positions/${there!.position}/remount`,
      `mounts/${there!.mount}`,
      `stores/parts/${there!.part}`,
    ]) {
      await page.goto(`/sallow-quay/${address}`)
      await heading(page, 'There is no such record at this site')
      expect(await page.getByRole('main').getByRole('link').count()).toBe(0)
    }
    await page.context().close()
  })
})

it('is told at the address of a site that one does not belong to', async () => {
  const page = await book.signedIn('engineer')
  await page.goto('/sallow-quay/flags')
  await heading(page, 'There is no site "sallow-quay" that you belong to')
  expect(await page.getByRole('navigation').count()).toBe(0)
  await page.getByRole('link', { name: 'Go to Harrow Point' }).click()
  await heading(page, 'Flags')
  await page.context().close()
})

describe('the way in', () => {
  it('says that e-mail or password is wrong, and keeps the e-mail', async () => {
    const page = await book.stranger({ viewport: desk })
    await page.goto('/sign-in')
    await page.getByLabel('E-mail').fill(engineer.email)
    await page.getByRole('textbox', { name: 'Password' }).fill('not-the-password-1')
    await page.keyboard.press('Enter')
    await page
      .getByRole('alert')
      .filter({ hasText: /password/i })
      .waitFor()
    expect(await page.getByLabel('E-mail').inputValue()).toBe(engineer.email)

    await page.getByRole('textbox', { name: 'Password' }).fill(engineer.password)
    await page.keyboard.press('Enter')
    await heading(page, 'Flags')
    await page.context().close()
  })

  it('is where an address leads that was opened without a session, and leads back to it', async () => {
    const page = await book.stranger()
    await page.goto('/harrow-point/stores/parts?q=H3')
    await page.getByLabel('E-mail').fill(engineer.email)
    await page.getByRole('textbox', { name: 'Password' }).fill(engineer.password)
    await page.keyboard.press('Enter')
    await heading(page, 'Parts')
    expect(await page.getByRole('searchbox').inputValue()).toBe('H3')
    await page.context().close()
  })

  it('is all that the back button shows after signing out', async () => {
    const page = await book.signedIn('technician')
    await mainPlace(page, 'Mounts').click()
    await heading(page, 'Mounts')
    await page.getByRole('table', { name: 'Mount records' }).waitFor()
    await page.getByRole('button', { name: 'Theme, unit and sign-out' }).click()
    await page.getByRole('button', { name: 'Sign out' }).click()
    const signIn = page.getByRole('button', { name: 'Sign in' })
    await signIn.waitFor()
    await page.goBack()
    await page.waitForURL(/sign-in/)
    await signIn.waitFor()
    expect(await page.getByRole('table').count()).toBe(0)
    expect(await page.getByRole('navigation').count()).toBe(0)
    await page.context().close()
  })

  it('is shown when a session has ended in the middle, and leads back to the page', async () => {
    const page = await book.signedIn('technician')
    const technician = demoSignIns.find(({ role }) => role === 'technician')!
    await page.context().clearCookies()
    await mainPlace(page, 'Greasing').click()
    await page.getByLabel('E-mail').fill(technician.email)
    await page.getByRole('textbox', { name: 'Password' }).fill(technician.password)
    await page.keyboard.press('Enter')
    await heading(page, 'Greasing')
    expect(new URL(page.url()).pathname).toBe('/harrow-point/greasing')
    await page.context().close()
  })
})
