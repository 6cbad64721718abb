import { defineConfig } from 'vitest/config'

const node = { environment: 'node' as const, restoreMocks: true }

export default defineConfig({
  test: {
    projects: [
      { test: { ...node, name: 'unit', include: ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.ts', 'seeds/**/*.test.ts'] } },
    ],
  },
})
