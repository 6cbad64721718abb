import { describe, expect, it } from 'vitest'
import { withClient } from '../../apps/ops/src/database-client.ts'
import { loadDemo } from '../../seeds/load-demo.ts'
import { useTestDatabase } from '../support/database.ts'

const database = useTestDatabase()

async function countAt<Row extends object>(siteCode: string, query: string): Promise<Row[]> {
  return await withClient(database.ownerUrl, async (client) => {
    const { rows } = await client.query<{ id: string }>('select id from site where code = $1', [siteCode])
    await client.query("select set_config('app.site', $1, false)", [rows[0]?.id])
    return (await client.query<Row>(query)).rows
  })
}

describe('loadDemo({ ownerUrl })', () => {
  it('fills the book so that every kind of flag is alive, and changes nothing the second time', async () => {
    await loadDemo({ ownerUrl: database.ownerUrl })
    const flags = await countAt<{ kind: string; open: number }>(
      'harrow-point',
      'select kind, count(*)::int as open from flag where cleared_at is null group by kind order by kind',
    )
    const open = Object.fromEntries(flags.map((flag) => [flag.kind, flag.open]))
    expect(open['greasing-overdue']).toBeGreaterThanOrEqual(12)
    expect(open['greasing-overdue']).toBeLessThanOrEqual(25)
    expect(open).toMatchObject({
      'mount-over': 3,
      'mount-under': 3,
      'mount-not-proven': 2,
      'residual-too-small': 2,
      'no-mount-record': 2,
      'never-greased': 4,
      'no-locating': 1,
      'several-locating': 1,
      'task-overdue': 1,
      'plan-review': 1,
      'running-hot': 1,
      'vibration-rise': 1,
      'grease-change-open': 1,
    })
    const before = await countAt('harrow-point', 'select count(*) from audit_entry')
    await loadDemo({ ownerUrl: database.ownerUrl })
    expect(await countAt('harrow-point', 'select count(*) from audit_entry')).toEqual(before)
  })

  it('shows one site nothing of the other', async () => {
    const positions = 'select count(*)::int as positions from position'
    expect(await countAt('sallow-quay', positions)).toEqual([{ positions: 2 }])
    const overdue = `select p.tag, flag.kind from flag join position p on p.id = flag.position_id order by p.tag`
    expect(await countAt('sallow-quay', overdue)).toEqual([
      { tag: 'SQ01-HD-A', kind: 'greasing-overdue' },
      { tag: 'SQ01-HD-B', kind: 'greasing-overdue' },
    ])
  })
})
