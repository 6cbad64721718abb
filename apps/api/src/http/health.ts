import { health, ready } from '@shaftbook/contract/health'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { DomainError } from '../domain-error.ts'
import { migrationNames } from './migrations.ts'
import { route } from './route.ts'

export function healthRoutes(app: FastifyInstance, { db }: Context): void {
  route(app, health, async () => ({ status: 'ok' as const }))

  route(app, ready, async () => {
    const applied = await db.ask<{ name: string }>('select name from applied_migrations()').catch((error: Error) => {
      throw new DomainError('not-ready', 'The database does not answer.', [], { cause: error })
    })
    const names = new Set(applied.map((row) => row.name))
    const missing = migrationNames().filter((name) => !names.has(name))
    if (missing.length > 0)
      throw new DomainError('not-ready', `The database waits for migrations: ${missing.join(', ')}.`)
    return { status: 'ok' as const, database: 'ok' as const, migrations: names.size }
  })
}
