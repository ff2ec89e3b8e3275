// Everything that has to hold, step by step; the last line says how much of it does.
//
// Each test counts for one, and so does each further step.

import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { CACHE, ROOT } from './workspace.mjs'

const REPORT = join(CACHE, 'tests.json')
const TOOL = '.ci/tool.mjs'
const STEPS = {
  'types of all code': [TOOL, 'tsc', '-b', 'tsconfig.json', 'tests/tsconfig.json'],
  'types under the oldest compiler': [
    'tests/node_modules/typescript-oldest/bin/tsc',
    '-p',
    'tests/oldest',
  ],
  lint: [TOOL, 'biome', 'lint', '--error-on-warnings'],
  format: [TOOL, 'biome', 'check', '--linter-enabled=false'],
  'direction of imports': [
    TOOL,
    'depcruise',
    '--config',
    '.dependency-cruiser.mjs',
    'packages',
    'tests',
  ],
  'no dead exports': [TOOL, 'knip'],
  'links in pages': ['.ci/links.mjs'],
  'the command on its demo house': [
    'packages/cli/start.mjs',
    'ride',
    '--month',
    '1',
    '--hours',
    '24',
  ],
}

const count = { passed: 0, failed: 0 }

tally('install and build', runNode(['.ci/setup.mjs', '--build']))
// Only here: it takes longer than the rest of the tests should.
const hasLab = runNode(['.ci/lab.mjs', '--install'])
if (!hasLab) console.error('JupyterLab could not be installed: it will not be tried in a browser.')
runTests()
for (const [name, args] of Object.entries(STEPS)) {
  const seconds = timed(() => tally(name, runNode(args)))
  console.log(`  ${seconds.toFixed(1)} s`)
}
console.log(`${count.passed} passed, ${count.failed} failed`)
process.exitCode = count.failed > 0 ? 1 : 0

function runTests() {
  rmSync(REPORT, { force: true })
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${REPORT}`]
  const args = [TOOL, 'vitest', 'run', '--config', 'tests/vitest.config.ts', ...reporters]
  const ok = runNode(args, hasLab ? { TIDEOVER_LAB: 'yes' } : {})
  const { numPassedTests = 0, numFailedTests = 0 } = readReport()
  count.passed += numPassedTests
  count.failed += numFailedTests
  // A file that does not load, or an error outside any test, fails no test but the run.
  if (!ok && numFailedTests === 0) tally('the run of the tests', false)
  if (ok && numPassedTests === 0) tally('that there are tests', false)
}

function readReport() {
  try {
    return JSON.parse(readFileSync(REPORT, 'utf8'))
  } catch {
    return {}
  }
}

function tally(name, ok) {
  count[ok ? 'passed' : 'failed']++
  console.log(`${ok ? 'ok' : 'FAILED'}: ${name}`)
}

function runNode(args, env = {}) {
  const { status } = spawnSync(process.execPath, args, {
    cwd: ROOT,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  })
  return status === 0
}

function timed(work) {
  const from = performance.now()
  work()
  return (performance.now() - from) / 1000
}
