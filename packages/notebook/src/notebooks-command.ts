// Runs notebooks from a command line: `[--write | --strip] [FILE…]`, all of notebooks/ without a
// name. With --write their outputs are put into the files, with --strip taken out and nothing run.

import { parseArgs } from 'node:util'
import { stripOutputs, writeOutputs } from './notebook-file.js'
import { notebookPaths, runFiles } from './run-files.js'

const { values, positionals } = parseArgs({
  options: {
    write: { type: 'boolean', default: false },
    strip: { type: 'boolean', default: false },
  },
  allowPositionals: true,
})

if (values.strip) {
  for (const path of notebookPaths(positionals)) stripOutputs(path)
} else {
  const { ran, failed } = await runFiles(positionals)
  if (values.write) {
    for (const { path, cells } of ran) {
      writeOutputs(
        path,
        cells.map(({ outputs }) => outputs),
      )
    }
  }
  process.exitCode = failed > 0 ? 1 : 0
}
