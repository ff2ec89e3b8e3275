// Runs notebooks from a command line: `[--write] [FILE…]`, all of notebooks/ without a name.
// With --write their outputs are put into the files.

import { readdirSync } from 'node:fs'
import { basename, dirname, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { writeOutputs } from './notebook-file.js'
import { startRunner } from './run.js'

const { values, positionals } = parseArgs({
  options: { write: { type: 'boolean', default: false } },
  allowPositionals: true,
})
const found = () =>
  readdirSync('notebooks')
    .filter((name) => name.endsWith('.ipynb'))
    .sort()
    .map((name) => `notebooks/${name}`)
const paths = (positionals.length > 0 ? positionals : found()).map((path) => resolve(path))

let failed = 0
for (const folder of new Set(paths.map(dirname))) {
  const runner = startRunner(folder)
  for (const path of paths.filter((one) => dirname(one) === folder)) {
    try {
      const run = await runner.run(basename(path))
      const seconds = run.cells.reduce((sum, { ms }) => sum + ms / 1000, 0)
      console.log(`${basename(path)}: ${run.cells.length} cells, ${seconds.toFixed(1)} s`)
      if (values.write)
        writeOutputs(
          path,
          run.cells.map(({ outputs }) => outputs),
        )
    } catch (error) {
      failed++
      console.error(error instanceof Error ? error.message : error)
    }
  }
  runner.close()
}
process.exitCode = failed > 0 ? 1 : 0
