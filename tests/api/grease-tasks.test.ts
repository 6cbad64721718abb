import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, aSpot, day, daysOn, expectRefused, type Spot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
const today = 100
beforeAll(async () => {
  service.setNow(new Date(service.alpha.meterRead.at.getTime() + today * day))
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
})

async function aFittedSpot(): Promise<Spot> {
  const spot = await aSpot(service)
  const mount = { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 0), meterShowsHours: 1000 }
  await technician.post('/mount-records', aMount(service.alpha, mount)).expect(201)
  return spot
}

function plan(spot: Spot, over: Record<string, unknown>) {
  const common = { source: 'by-hand', reason: 'As the maker says' }
  return engineer.post('/grease-plans', { id: randomUUID(), positionId: spot.positionId, ...common, ...over })
}

const ways = {
  refill: () => ({ way: 'automatic', task: 'refill', greaseId: service.alpha.greaseId, doseG: 120, calendarMonths: 6 }),
  'check-system': () => ({ way: 'central', task: 'check-system', calendarDays: 7 }),
  'check-oil': () => ({ way: 'oil', task: 'check-oil', oil: 'Mineral 220', calendarDays: 7 }),
  'change-oil': () => ({
    way: 'oil',
    task: 'change-oil',
    oil: 'Mineral 220, 4 l',
    intervalHours: 4000,
    calendarMonths: 12,
  }),
  'turn-shaft': () => ({ way: null, task: 'turn-shaft', calendarDays: 14 }),
}

async function tasksOf(spot: Spot) {
  const reply = await technician.get(`/positions/${spot.positionId}/overview`).expect(200)
  return reply.body as {
    plan: object | null
    plans: { task: string | null; way: string }[]
    tasks: Record<string, unknown>[]
  }
}

async function openFlags(spot: Spot): Promise<string[]> {
  const reply = await technician.get(`/flags?positionId=${spot.positionId}`).expect(200)
  return reply.body.items.map((flag: { kind: string }) => flag.kind).sort()
}

describe('a plan', () => {
  it('of another task stands beside the one of regreasing, and each is due by itself', async () => {
    const spot = await aFittedSpot()
    await plan(spot, ways['turn-shaft']()).expect(201)
    await plan(spot, ways['check-oil']()).expect(201)
    const { plans, tasks } = await tasksOf(spot)
    expect(new Set(plans.map(({ task }) => task))).toEqual(new Set(['check-oil', 'regrease', 'turn-shaft']))
    expect(new Set(tasks.map(({ task }) => task))).toEqual(new Set(['check-oil', 'regrease', 'turn-shaft']))
    const turning = tasks.find(({ task }) => task === 'turn-shaft')
    // asked for today: due in 14 days
    expect(turning).toMatchObject({
      dueOn: daysOn(service.alpha, today + 14).slice(0, 10),
      state: 'not-due',
      doseG: null,
    })
  })

  it.each(Object.keys(ways) as (keyof typeof ways)[])(
    'of %s comes back as it was told, and replaces its own only',
    async (task) => {
      const spot = await aFittedSpot()
      const first = (await plan(spot, ways[task]()).expect(201)).body
      expect(first).toMatchObject({ ...ways[task](), tag: spot.tag, endedAt: null })
      const second = (await plan(spot, ways[task]()).expect(201)).body
      const { plans } = await tasksOf(spot)
      expect(plans.filter((found) => found.task === task)).toEqual([second])
      expect(plans).toHaveLength(2)
      const reply = await technician.get(`/grease-plans/${first.id}`).expect(200)
      expect(reply.body.endedAt).not.toBeNull()
    },
  )

  it('that seals for life ends all but turning, has nothing due, and the position stands in the list as sealed', async () => {
    const spot = await aFittedSpot()
    await plan(spot, ways['check-oil']()).expect(201)
    await plan(spot, ways['turn-shaft']()).expect(201)
    await plan(spot, { way: 'sealed', task: null }).expect(201)
    const sealed = await tasksOf(spot)
    expect(sealed.plan).toBeNull()
    expect(new Set(sealed.plans.map(({ task }) => task))).toEqual(new Set([null, 'turn-shaft']))
    expect(sealed.tasks.map(({ task }) => task)).toEqual(['turn-shaft'])
    const board = await technician.get(`/position-board?search=${spot.tag}`).expect(200)
    expect(board.body.items).toMatchObject([{ sealedForLife: true }])
    const list = await technician.get('/grease-plans?way=sealed&current=true').expect(200)
    expect(list.body.items.map(({ tag }: { tag: string }) => tag)).toContain(spot.tag)
    const body = { id: randomUUID(), positionId: spot.positionId, greasedAt: daysOn(service.alpha, today), doseG: 10 }
    await expectRefused(
      technician.post('/greasings', { ...body, greaseId: service.alpha.greaseId }),
      422,
      'not-allowed-here',
      'positionId',
    )
  })

  it('of regreasing ends sealed for life', async () => {
    const spot = await aFittedSpot()
    await plan(spot, { way: 'sealed', task: null }).expect(201)
    const gun = { greaseId: service.alpha.greaseId, entry: 'side', doseG: 30, intervalHours: 900 }
    expect((await plan(spot, gun).expect(201)).body).toMatchObject({ way: 'gun', task: 'regrease', calendarMonths: 12 })
    expect((await tasksOf(spot)).plans).toMatchObject([{ way: 'gun' }])
  })

  it('can be ended without a new one, with a reason, and once', async () => {
    const spot = await aFittedSpot()
    const ended = await engineer.post(`/grease-plans/${spot.planId}/end`, { reason: 'Out of use' }).expect(200)
    expect(ended.body).toMatchObject({ endedReason: 'Out of use' })
    expect(await tasksOf(spot)).toMatchObject({ plan: null, plans: [], tasks: [] })
    expect(await openFlags(spot)).not.toContain('never-greased')
    const again = await engineer.post(`/grease-plans/${spot.planId}/end`, { reason: 'Out of use' })
    expect([again.status, again.body.code]).toEqual([422, 'not-allowed-here'])
    await technician.post(`/grease-plans/${spot.planId}/end`, { reason: 'Out of use' }).expect(403)
  })

  it.each([
    ['gun without a grease', { entry: 'side', doseG: 10, intervalHours: 100 }, 'greaseId'],
    ['a refill without months', { way: 'automatic', task: 'refill', doseG: 10 }, 'calendarMonths'],
    ['turning without days', { way: null, task: 'turn-shaft' }, 'calendarDays'],
    ['a check that never comes', { way: 'central', task: 'check-system' }, 'calendarDays'],
    ['a check by another way', { way: 'gun', task: 'check-oil', calendarDays: 7 }, 'way'],
    ['sealed with a task', { way: 'sealed', task: 'regrease' }, 'way'],
    ['no task though not sealed', { way: 'gun', task: null }, 'task'],
  ])('of %s is refused at the field', async (_name, over, path) => {
    const spot = await aSpot(service)
    const reply = await plan(spot, over)
    expect(reply.status).toBe(400)
    expect(reply.body.fields.map((field: { path: string }) => field.path)).toContain(path)
  })
})

describe('what was done', () => {
  const done = (spot: Spot, task: string, onDay: number, over: Record<string, unknown> = {}) =>
    technician.post('/greasings', {
      id: randomUUID(),
      positionId: spot.positionId,
      task,
      greasedAt: daysOn(service.alpha, onDay),
      ...over,
    })

  it.each(['check-system', 'check-oil', 'change-oil', 'turn-shaft'] as const)(
    '%s needs no dose and moves its own due date',
    async (task) => {
      const spot = await aFittedSpot()
      await plan(spot, ways[task]()).expect(201)
      const reply = await done(spot, task, today).expect(201)
      expect(reply.body).toMatchObject({ task, kind: null, doseG: null, greaseId: null, greaseName: null })
      const { tasks } = await tasksOf(spot)
      expect(tasks.find((found) => found['task'] === task)).toMatchObject({
        lastGreasedAt: daysOn(service.alpha, today),
      })
      expect(tasks.find((found) => found['task'] === 'regrease')).toMatchObject({ state: 'never-greased' })
      const history = await technician.get(`/positions/${spot.positionId}/history`).expect(200)
      expect(history.body.greasings).toEqual([])
      await expectRefusedField(done(spot, task, today, { doseG: 10 }), 'doseG')
    },
  )

  it('a refill has the grease of its plan, and the next one is due when the lubricator is empty', async () => {
    const spot = await aFittedSpot()
    await plan(spot, ways.refill()).expect(201)
    await expectRefusedField(done(spot, 'refill', today), 'doseG')
    const reply = await done(spot, 'refill', today, { doseG: 120 }).expect(201)
    expect(reply.body).toMatchObject({ greaseId: service.alpha.greaseId, plannedDoseG: 120, windowResult: 'no-window' })
    const { tasks } = await tasksOf(spot)
    const filled = new Date(service.alpha.meterRead.at.getTime() + today * day)
    const empty = new Date(Date.UTC(filled.getUTCFullYear(), filled.getUTCMonth() + 6, 1))
    expect(String(tasks.find(({ task }) => task === 'refill')?.['dueOn']).slice(0, 7)).toBe(
      empty.toISOString().slice(0, 7),
    )
  })

  it('a check that is overdue raises a flag of its own, and doing it clears it', async () => {
    const spot = await aFittedSpot()
    await plan(spot, ways['check-oil']()).expect(201)
    service.setNow(new Date(service.alpha.meterRead.at.getTime() + (today + 20) * day))
    await done(spot, 'turn-shaft', today + 20).expect(201)
    expect(await openFlags(spot)).toContain('task-overdue')
    await done(spot, 'check-oil', today + 20).expect(201)
    expect(await openFlags(spot)).not.toContain('task-overdue')
    service.setNow(new Date(service.alpha.meterRead.at.getTime() + today * day))
  })

  it('is listed by task', async () => {
    const reply = await technician.get('/greasings?task=check-oil&limit=200').expect(200)
    expect(reply.body.items.length).toBeGreaterThan(0)
    expect(new Set(reply.body.items.map(({ task }: { task: string }) => task))).toEqual(new Set(['check-oil']))
    const due = await technician.get('/due-greasings?task=turn-shaft&limit=200').expect(200)
    expect(new Set(due.body.items.map(({ task }: { task: string }) => task))).toEqual(new Set(['turn-shaft']))
  })
})

async function expectRefusedField(request: ReturnType<SiteAgent['post']>, path: string): Promise<void> {
  const reply = await request
  expect(reply.status).toBe(400)
  expect(reply.body.fields.map((field: { path: string }) => field.path)).toContain(path)
}
