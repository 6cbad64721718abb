import { loadGun as endpoint, type Gun, type GunLoad } from '@shaftbook/contract/guns'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { notFound } from '../domain-error.ts'
import { doWork, momentOf, type Worker } from '../meters/work.ts'
import { findRow } from '../register/register.store.ts'
import { guns } from '../register/tables.ts'
import { findGreaseName } from '../greasing/plans.store.ts'

/** Says what a gun is loaded with from now on. */
export function loadGun(context: Context, worker: Worker, gunId: string, body: z.output<typeof GunLoad>): Promise<Gun> {
  return doWork(context, worker, async (work) => {
    const { tx } = work
    if ((await receive(tx, endpoint.name, body.id, { ...body, gunId })) === 'new') {
      momentOf(work, body.loadedAt, 'loadedAt')
      if ((await findGreaseName(tx, body.greaseId)) === undefined) throw notFound('grease', 'greaseId')
      const where = { siteId: tx.scope.siteId, id: gunId }
      const { count } = await tx.prisma.gun.updateMany({ where, data: { greaseId: body.greaseId } })
      if (count === 0) throw notFound('grease gun')
    }
    const gun = await findRow(tx, guns, gunId)
    if (!gun) throw notFound('grease gun')
    return gun as Gun
  })
}
