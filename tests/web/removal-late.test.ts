import { randomUUID } from 'node:crypto'
import { expect, it } from 'vitest'
import { heading } from '../support/at-the-screen.ts'
import { phone, useOpenBook } from '../support/open-book.ts'

const book = useOpenBook()

it('a removal that was begun for a bearing that left meanwhile is refused where it was typed, and stays there', async () => {
  const [place] = await book.sql<{ id: string; tag: string }>(`
    select p.id, p.tag from position p
    join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
    join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
    join meter on meter.site_id = s.site_id and meter.machine_id = s.machine_id
    where p.retired_at is null and f.fitted_at < now() - interval '30 days' order by p.tag limit 1`)
  const { id, tag } = place!
  const page = await book.signedIn('technician', { viewport: phone })
  await page.goto(`/harrow-point/positions/${id}/removal`)
  await heading(page, `Removal at ${tag}`)
  const engineer = await book.signedIn('engineer')
  const body = {
    id: randomUUID(),
    positionId: id,
    removedAt: new Date(Date.now() - 60_000).toISOString(),
    endKind: 'not-failed',
    observer: 'Tomas Wren',
    noHoursReason: 'The meter was dark',
  }
  const status = await engineer.evaluate(async (told) => {
    const headers = { 'content-type': 'application/json' }
    const sent = { method: 'POST', headers, body: JSON.stringify(told) }
    return (await fetch('/api/v1/sites/harrow-point/removals', sent)).status
  }, body)
  expect(status).toBe(201)

  const end = page.getByLabel(/^Removed, not failed/)
  await end.check()
  await page.getByLabel('Or why it was not read').fill('The meter was dark')
  await page.getByRole('button', { name: 'Sign the removal' }).click()
  await page.getByRole('dialog').getByRole('button', { name: 'Sign', exact: true }).click()
  const alert = page.getByRole('alert').filter({ hasText: `${tag} has changed since this removal was begun` })
  await alert.waitFor()
  expect(await alert.textContent()).toMatch(/was taken out on .*, signed by /)
  expect(await end.isChecked()).toBe(true)
})
