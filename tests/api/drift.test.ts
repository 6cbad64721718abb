import { PrismaPg } from '@prisma/adapter-pg'
import { Client } from 'pg'
import { expect, it } from 'vitest'
import { Prisma, PrismaClient } from '../../prisma/client/client.ts'
import { useTestDatabase } from '../support/database.ts'

const database = useTestDatabase()

/** What Prisma says of itself: models by name, and the scalar fields of each. */
const models = Object.keys(Prisma.ModelName)
const said: Readonly<Record<string, object>> = Prisma

it.each(models)('every field of the model %s is a column of the migrated database', async (name) => {
  const prisma = new PrismaClient({ adapter: new PrismaPg({ connectionString: database.ownerUrl }) })
  const fields = Object.keys(said[`${name}ScalarFieldEnum`] as object)
  const delegate = (prisma as unknown as Record<string, { findMany(query: object): Promise<unknown[]> }>)[
    name.charAt(0).toLowerCase() + name.slice(1)
  ]
  expect(fields.length).toBeGreaterThan(2)
  expect(await delegate?.findMany({ select: Object.fromEntries(fields.map((field) => [field, true])) })).toEqual([])
  await prisma.$disconnect()
})

it('every table of the migrated database has a model', async () => {
  const client = new Client(database.ownerUrl)
  await client.connect()
  const { rows } = await client.query<{ name: string }>(
    `select tablename as name from pg_tables where schemaname = 'public' and tablename <> '_prisma_migrations'`,
  )
  await client.end()
  const named = (model: string): string => model.replaceAll(/(?<!^)[A-Z]/g, (letter) => `_${letter}`).toLowerCase()
  expect(rows.map((row) => row.name).toSorted()).toEqual(models.map(named).toSorted())
})
