// What npm keeps for itself is told, not answered as if it had not been asked.

import { expect, it } from 'vitest'
import { eatenOptions } from '../../packages/cli/src/eaten-options.js'
import { buildProgram } from '../../packages/cli/src/program.js'

const eaten = (env: Record<string, string>): string[] =>
  eatenOptions(buildProgram(), env).map(({ where }) => where)

it('names every option that npm start has kept', () => {
  const env = {
    npm_lifecycle_event: 'start',
    npm_config_month: 'true',
    npm_config_start_soc: 'true',
  }
  expect(eaten(env).sort()).toEqual(['--month', '--start-soc'])
})

it('minds neither other scripts nor other settings of npm', () => {
  expect(eaten({ npm_lifecycle_event: 'test', npm_config_month: 'true' })).toEqual([])
  expect(eaten({ npm_lifecycle_event: 'start', npm_config_cache: '/tmp' })).toEqual([])
  expect(eaten({})).toEqual([])
})
