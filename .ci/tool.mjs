// Runs a tool of the workspace from the root, installed first and with --build built:
// `node .ci/tool.mjs [--build] TOOL ARGUMENT…`

import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { prepare, ROOT } from './workspace.mjs'

const [first, ...rest] = process.argv.slice(2)
const building = first === '--build'
const [tool, ...args] = building ? rest : [first, ...rest]
prepare({ scope: 'all', target: building && 'all' })

const { status } = spawnSync(join(ROOT, 'tests/node_modules/.bin', tool), args, {
  cwd: ROOT,
  stdio: 'inherit',
  shell: process.platform === 'win32',
})
process.exitCode = status ?? 1
