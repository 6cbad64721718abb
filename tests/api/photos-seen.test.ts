import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import supertest from 'supertest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aJpeg, photoPath } from '../support/pictures.ts'
import { ask, expectNothingWritten } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let stores: SiteAgent
let engineer: SiteAgent
let elsewhere: SiteAgent
beforeAll(async () => {
  const { alpha, beta } = service
  technician = await service.signIn(alpha.people.technician, 'alpha')
  stores = await service.signIn(alpha.people.stores, 'alpha')
  engineer = await service.signIn(alpha.people.engineer, 'alpha')
  elsewhere = await service.signIn(beta.people.manager, 'beta')
})

async function add(by: SiteAgent = technician, over: Record<string, string> = {}): Promise<string> {
  const reply = await by.postFile(photoPath(service.alpha, over), await aJpeg()).expect(201)
  return reply.body.id as string
}

describe('a photo is seen', () => {
  it('by everyone of the site, and added by those who work at the shaft', async () => {
    const id = await add()
    for (const person of [technician, stores, engineer]) await person.get(`/photos/${id}/image`).expect(200)
    const refused = await stores.postFile(photoPath(service.alpha), await aJpeg())
    expect([refused.status, refused.body.code]).toEqual([403, 'role-not-allowed'])
  })

  it('by nobody who is signed out or belongs to another site, under neither of the two sites', async () => {
    const id = await add()
    const address = `/api/v1/sites/alpha/photos/${id}/image`
    expect((await supertest(service.app.server).get(address)).status).toBe(401)
    const { email, password } = service.beta.people.manager
    const agent = supertest.agent(service.app.server)
    await agent.post('/api/v1/session').send({ email, password }).expect(200)
    expect((await agent.get(address)).status).toBe(404)
    expect((await elsewhere.get(`/photos/${id}/image`)).status).toBe(404)
    expect((await elsewhere.get(`/photos/${id}`)).status).toBe(404)
  })

  it('at its own site only where two sites hold the same picture: each has a file of its own', async () => {
    const manager = await service.signIn(service.beta.people.manager, 'beta')
    const file = await aJpeg({ colour: '#0a0b0c' })
    const { body: ofAlpha } = await technician.postFile(photoPath(service.alpha), file).expect(201)
    const { body: ofBeta } = await manager.postFile(photoPath(service.beta), file).expect(201)
    expect(ofBeta.sha256).toBe(ofAlpha.sha256)
    const at = (siteId: string): string =>
      join(service.photoFolder, siteId, ofAlpha.sha256.slice(0, 2), ofAlpha.sha256.slice(2))
    expect(await readFile(at(service.alpha.siteId))).toEqual(await readFile(at(service.beta.siteId)))
  })
})

describe('a photo is withdrawn', () => {
  it('with a reason that stays; its picture is no longer given out', async () => {
    const id = await add()
    const reply = await technician.post(`/photos/${id}/withdrawal`, { reason: 'Shows a face' }).expect(200)
    expect(reply.body).toMatchObject({
      id,
      withdrawnAt: expect.any(String),
      withdrawnBy: service.alpha.people.technician.name,
      withdrawnReason: 'Shows a face',
    })
    const image = await technician.get(`/photos/${id}/image`)
    expect([image.status, image.body.code]).toEqual([404, 'not-found'])
    expect(image.body.detail).toContain('Shows a face')
    const list = await technician.get(`/photos?positionId=${service.alpha.locating.id}&limit=200`).expect(200)
    expect(list.body.items).toContainEqual(reply.body)
  })

  it('once: asked again it is answered the same, with another reason it is refused', async () => {
    const id = await add()
    const first = await technician.post(`/photos/${id}/withdrawal`, { reason: 'Wrong bearing' }).expect(200)
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      const again = await technician.post(`/photos/${id}/withdrawal`, { reason: 'Wrong bearing' }).expect(200)
      expect(again.body).toEqual(first.body)
      const other = await engineer.post(`/photos/${id}/withdrawal`, { reason: 'Not sharp' })
      expect([other.status, other.body.code]).toEqual([409, 'already-withdrawn'])
    })
  })

  it('by the one who added it, an engineer or a manager', async () => {
    const id = await add(engineer)
    const refused = await technician.post(`/photos/${id}/withdrawal`, { reason: 'Not sharp' })
    expect([refused.status, refused.body.code]).toEqual([403, 'role-not-allowed'])
    await engineer.post(`/photos/${await add()}/withdrawal`, { reason: 'Not sharp' }).expect(200)
    await technician.post(`/photos/${id}/withdrawal`, { reason: 'x' }).expect(400)
  })
})

describe('the table of photos', () => {
  const change = (text: string, id: string) => ask(service.owner, service.alpha.siteId, text, [id])

  it('keeps a photo as it was added, and its withdrawal as it was said', async () => {
    const id = await add()
    await expect(change(`update photo set caption = 'other' where id = $1`, id)).rejects.toThrow(/never changes/)
    await expect(change('delete from photo where id = $1', id)).rejects.toThrow(/never changes/)
    await technician.post(`/photos/${id}/withdrawal`, { reason: 'Shows a face' }).expect(200)
    const undo = 'update photo set withdrawn_at = null, withdrawn_by = null, withdrawn_reason = null where id = $1'
    await expect(change(undo, id)).rejects.toThrow(/never changes/)
  })

  it('is in the audit trail with the person', async () => {
    const id = await add()
    await technician.post(`/photos/${id}/withdrawal`, { reason: 'Shows a face' }).expect(200)
    const trail = await engineer.get(`/audit-entries?table=photo&rowId=${id}`).expect(200)
    const person = service.alpha.people.technician.name
    expect(trail.body.items).toMatchObject([
      { action: 'update', person, after: { withdrawn_reason: 'Shows a face' } },
      { action: 'insert', person, after: { id } },
    ])
  })
})
