// The tests' own settings, for the one long run.

import type { ViteUserConfig } from 'vitest/config'
import tests from '../vitest.config.js'

const config: ViteUserConfig = {
  ...tests,
  test: { ...tests.test, include: ['tests/equality/*.long.ts'] },
}
export default config
