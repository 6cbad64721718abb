import { defineConfig } from 'vitest/config'

// a busy machine is no failure: the limit only ends what hangs
const node = { environment: 'node' as const, restoreMocks: true, allowOnly: false, testTimeout: 30_000 }
const withDatabase = {
  ...node,
  globalSetup: ['tests/support/database-server.ts'],
  hookTimeout: 60_000,
}

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          ...node,
          name: 'unit',
          include: [
            'packages/*/src/**/*.test.ts',
            'apps/*/src/**/*.test.{ts,tsx}',
            'apps/web/bundle/*.test.ts',
            'seeds/**/*.test.ts',
          ],
        },
      },
      { test: { ...withDatabase, name: 'api', include: ['tests/api/**/*.test.ts'] } },
      {
        test: {
          ...withDatabase,
          name: 'web',
          include: ['tests/web/**/*.test.ts'],
          globalSetup: [...withDatabase.globalSetup, 'tests/support/web-ground.ts'],
          testTimeout: 90_000,
          // a real browser beside a real network that is cut: what fails is tried once more, and the report says so
          retry: 1,
        },
      },
      { test: { ...withDatabase, name: 'faults', include: ['tests/faults/**/*.test.ts'], testTimeout: 120_000 } },
    ],
  },
})
