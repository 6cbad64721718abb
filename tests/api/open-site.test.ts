import request from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildApp } from '../../apps/api/src/app.ts'
import { Config } from '../../apps/api/src/config.ts'
import { openSite } from '../../apps/ops/src/open-site.ts'
import { useTestDatabase } from '../support/database.ts'

const database = useTestDatabase()
const site = {
  code: 'north-mill',
  name: 'North Mill',
  'time-zone': 'Europe/Oslo',
  manager: 'Ada Quist',
  email: 'ada@north.example',
}
let app: Awaited<ReturnType<typeof buildApp>>

beforeAll(async () => {
  app = await buildApp(Config.parse({ appUrl: database.appUrl, log: 'silent' }))
  await app.ready()
})
afterAll(() => app.close())

describe('openSite(ownerUrl, site)', () => {
  it('opens a site whose manager signs in with the password that was made', async () => {
    const password = await openSite(database.ownerUrl, site)
    const reply = await request(app.server).post('/api/v1/session').send({ email: site.email, password })
    expect(reply.status).toBe(200)
    expect(reply.body.memberships).toMatchObject([{ siteCode: 'north-mill', role: 'manager', timeZone: 'Europe/Oslo' }])
  })

  it('gives somebody who has an account a second site and keeps the password', async () => {
    expect(await openSite(database.ownerUrl, { ...site, code: 'south-mill', name: 'South Mill' })).toBeUndefined()
  })

  it('refuses a code that is taken, and makes nobody', async () => {
    const again = openSite(database.ownerUrl, { ...site, email: 'bo@north.example' })
    await expect(again).rejects.toThrow('There is a site "north-mill" already')
    const reply = await request(app.server).post('/api/v1/session').send({ email: 'bo@north.example', password: 'x' })
    expect(reply.status).toBe(401)
  })
})
