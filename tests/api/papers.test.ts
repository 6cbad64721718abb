import { randomUUID } from 'node:crypto'
import type { Test } from 'supertest'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { codesIn, readPrinted } from '../support/printed.ts'
import { aMount, overReadings } from './shaft-work.ts'

const address = 'https://book.example'
const service = useTestApp({ address })
let technician: SiteAgent
let stranger: SiteAgent
let record: { id: string; tag: string }

beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  stranger = await service.signIn(service.beta.people.technician, 'beta')
  const mount = aMount(service.alpha, { readings: overReadings, outOfBandReason: 'No other bearing on the shelf' })
  record = (await technician.post('/mount-records', mount).expect(201)).body as typeof record
})

async function pdf(request: Test) {
  const reply = await request.buffer(true).parse((response, done) => {
    const chunks: Buffer[] = []
    response.on('data', (chunk: Buffer) => chunks.push(chunk))
    response.on('end', () => done(null, Buffer.concat(chunks)))
  })
  expect({ status: reply.status, type: reply.type }).toEqual({ status: 200, type: 'application/pdf' })
  return { paper: await readPrinted(reply.body as Buffer), disposition: reply.headers['content-disposition'] }
}

describe('GET …/mount-records/:id/paper', () => {
  it('answers with the record as PDF that leads back to it', async () => {
    const { paper, disposition } = await pdf(technician.get(`/mount-records/${record.id}/paper`))
    expect(paper.pages).toBeLessThanOrEqual(2)
    expect(paper.texts[0]).toContain(record.tag)
    expect(paper.texts.join(' ')).toContain('No other bearing on the shelf')
    expect(await codesIn(await paper.picture(1, 150))).toEqual([`${address}/alpha/mounts/${record.id}`])
    expect(disposition).toContain(`mount ${record.tag}`)
  })

  it('says DRAFT on a draft', async () => {
    const draft = aMount(service.alpha, { positionId: service.alpha.nonLocating.id, sign: false })
    const { body } = await technician.post('/mount-records', draft).expect(201)
    const { paper } = await pdf(technician.get(`/mount-records/${(body as typeof record).id}/paper`))
    for (const text of paper.texts) expect(text).toContain('DRAFT')
  })

  it('is hidden from other sites, and from who is not signed in', async () => {
    await stranger.get(`/mount-records/${record.id}/paper`).expect(404)
    const reply = await service.app.inject(`/api/v1/sites/alpha/mount-records/${record.id}/paper`)
    expect(reply.statusCode).toBe(401)
  })
})

describe('GET …/positions/:id/blank-sheet', () => {
  it("prints the position's own numbers on one or two pages", async () => {
    const { id, tag } = service.alpha.locating
    const overview = (await technician.get(`/positions/${id}/overview`).expect(200)).body as {
      bearingType: { designation: string }
      band: { minUm: number; maxUm: number }
      residualMinUm: number
    }
    const { paper } = await pdf(technician.get(`/positions/${id}/blank-sheet`))
    const text = paper.texts.join(' ')
    expect(paper.pages).toBeLessThanOrEqual(2)
    const { band, residualMinUm, bearingType } = overview
    const said = [
      tag,
      bearingType.designation,
      `Reduction ${band.minUm} to ${band.maxUm} µm`,
      `bench mean less ${band.maxUm} µm`,
      `bench mean less ${band.minUm} µm`,
      `at least ${residualMinUm} µm`,
    ]
    expect(said.filter((words) => !text.includes(words))).toEqual([])
    expect(await codesIn(await paper.picture(1, 150))).toEqual([`${address}/alpha/at/${encodeURIComponent(tag)}`])
  })

  it('is hidden from other sites', async () => {
    const reply = await stranger.get(`/positions/${service.alpha.locating.id}/blank-sheet`)
    expect(reply.status).toBe(404)
  })
})

describe('GET …/position-labels', () => {
  it('prints a label for each position of the choice, whose code leads to it', async () => {
    const { locating, nonLocating } = service.alpha
    const { paper } = await pdf(technician.get(`/position-labels?ids=${locating.id},${nonLocating.id}`))
    const codes = await Promise.all([1, 2].map(async (page) => await codesIn(await paper.picture(page, 300))))
    const tags = [locating.tag, nonLocating.tag].sort()
    expect(codes).toEqual(tags.map((tag) => [`${address}/alpha/at/${encodeURIComponent(tag)}`]))
  })

  it('chooses by area, machine and search, and says where nothing answers', async () => {
    const all = await pdf(technician.get(`/position-labels?areaId=${service.alpha.areaId}`))
    expect(all.paper.pages).toBeGreaterThanOrEqual(2)
    const one = await pdf(technician.get(`/position-labels?search=${encodeURIComponent(service.alpha.locating.tag)}`))
    expect(one.paper.pages).toBe(1)
    const { body } = await technician.get(`/position-labels?machineId=${randomUUID()}`).expect(404)
    expect(body).toMatchObject({ code: 'not-found' })
  })

  it('prints none of another site', async () => {
    const reply = await stranger.get(`/position-labels?ids=${service.alpha.locating.id}`)
    expect(reply.status).toBe(404)
  })

  it('refuses labels that nobody can read, and more ids than an address holds', async () => {
    const { body } = await technician.get('/position-labels?paper=a4&columns=8&leftMm=30').expect(400)
    expect((body as { detail: string }).detail).toMatch(/for a label/)
    const ids = Array.from({ length: 101 }, () => randomUUID()).join(',')
    await technician.get(`/position-labels?ids=${ids}`).expect(400)
  })
})
