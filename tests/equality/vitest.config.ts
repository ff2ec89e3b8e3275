// The tests' own settings, for the one long run: against the packages as built, whose minutes cost a
// third of those of sources that a test tool reads.

import type { ViteUserConfig } from 'vitest/config'
import tests from '../vitest.config.js'

const { resolve: _, ssr: __, ...kept } = tests

const config: ViteUserConfig = {
  ...kept,
  test: {
    ...tests.test,
    include: ['tests/equality/*.long.ts'],
    server: { deps: { external: [/\/packages\/[^/]+\/dist\//] } },
  },
}
export default config
