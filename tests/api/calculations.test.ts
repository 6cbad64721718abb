import { allCalculations } from '@shaftbook/contract/calculations/all-calculations'
import { Problem } from '@shaftbook/contract/problem'
import supertest from 'supertest'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp } from '../support/app.ts'
import { fittingCases } from './fitting-cases.ts'
import { runningCases } from './running-cases.ts'

const calculationCases = [...fittingCases, ...runningCases]

const service = useTestApp()
let cookie: string
beforeAll(async () => {
  const { email, password } = service.alpha.people.technician
  const reply = await supertest(service.app.server).post('/api/v1/session').send({ email, password })
  cookie = String(reply.headers['set-cookie']).split(';')[0] as string
})

function calculate(name: string, input: object): supertest.Test {
  return supertest(service.app.server).post(`/api/v1/calculations/${name}`).set('cookie', cookie).send(input)
}

/** The expected number where the answer lies within half a thousandth of it: what was computed by hand is no closer. */
function rounded(value: unknown, like: unknown): unknown {
  if (typeof value === 'number' && typeof like === 'number') return close(value, like) ? like : value
  if (Array.isArray(value) && Array.isArray(like)) return value.map((each, index) => rounded(each, like[index]))
  return value
}

function close(value: number, like: number): boolean {
  return Math.abs(value - like) <= Math.abs(like) * 5e-4
}

describe('POST /api/v1/calculations/<name>', () => {
  it('every calculation is asked for at least once', () => {
    const asked = new Set(calculationCases.map(([name]) => name))
    expect([...asked].toSorted()).toEqual(allCalculations.map(({ name }) => name).toSorted())
  })

  it.each(calculationCases)('%s answers the number that is known from elsewhere: %j', async (name, input, expected) => {
    const reply = await calculate(name, input)
    expect(reply.body).toMatchObject({ source: { title: expect.any(String) }, rule: expect.any(String) })
    expect(reply.status).toBe(200)
    const known = Object.entries(expected).map(([field, like]) => [field, rounded(reply.body[field], like)])
    expect(Object.fromEntries(known)).toEqual(expected)
    expect(reply.body.cautions).toEqual(expect.any(Array))
  })

  it.each([
    ['grease-dose', { outsideDiameterMm: 5, widthMm: 46, entry: 'side' }, 'outsideDiameterMm', 'takes 10 to 3000 mm'],
    ['feeler-stack', { wantedUm: 100, bladesUm: [50, 4] }, 'bladesUm.1', 'takes 5 to 2000 µm'],
    ['bearing-code', { bearing: 'nonsense' }, 'bearing', 'basic code'],
    ['go-no-go', { passesUm: 80, stopsUm: 70 }, 'stopsUm', 'thicker'],
    ['shaft-check', { nominalMm: 100, readingsMm: [75], taper: '1:12' }, 'readingsMm', 'below 95 mm'],
    ['nut-angle', { travelMm: 1, taper: '1:12' }, 'nutCode', 'Give the nut'],
    [
      'drive-up-guidance',
      { boreMm: 100, clearanceClass: 'C3', benchRowAUm: [125], benchRowBUm: [125], stepsRowAUm: [105], taper: '1:12' },
      'stepsRowBUm',
      'both rows',
    ],
    ['next-greasing', { lastDate: '2026-11-01', today: '2026-11-24' }, 'intervalHours', 'needs an interval'],
    ['next-greasing', { lastDate: '2026-12-01', today: '2026-11-24', calendarMonths: 6 }, 'lastDate', 'future'],
  ])('%s refuses %j at the field %s', async (name, input, path, words) => {
    const reply = await calculate(name, input)
    expect(reply.status).toBe(422)
    expect(Problem.parse(reply.body)).toMatchObject({
      code: 'not-calculable',
      detail: expect.stringContaining(words),
      fields: [{ path }],
    })
  })

  it('what the tables do not have is an answer in words, not an error', async () => {
    const reply = await calculate('clearance-band', { boreMm: 1500, taper: '1:12', clearanceClass: 'C3' })
    expect(reply.status).toBe(200)
    expect(reply.body).toEqual({
      sentence: expect.stringContaining('no row for 1500 mm'),
      source: expect.anything(),
      rule: 'R-RED',
      cautions: [],
    })
  })

  it.each([
    [{}, 'outsideDiameterMm'],
    [{ outsideDiameterMm: '180', widthMm: 46, entry: 'side' }, 'outsideDiameterMm'],
    [{ outsideDiameterMm: 180, widthMm: 46, entry: 'below' }, 'entry'],
  ])('a request that is not complete or readable is told which field: %j', async (input, path) => {
    const reply = await calculate('grease-dose', input)
    expect(reply.status).toBe(400)
    expect(reply.body.fields[0].path).toBe(path)
  })

  it('a calculation that does not exist is not found', async () => {
    expect((await calculate('perpetual-motion', {})).status).toBe(404)
  })
})
