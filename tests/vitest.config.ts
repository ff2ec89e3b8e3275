// Tests run against the sources: each package names its own under the first condition.

import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const conditions = ['@tideover/source', 'module', 'node', 'development|production']

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 30_000,
    // Half of them wait for a command of their own; one worker fewer would leave a core idle.
    maxWorkers: Math.max(2, availableParallelism() - 1),
  },
})
