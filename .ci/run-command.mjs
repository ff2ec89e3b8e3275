// The command, once it is installed and built.

import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { prepare, ROOT } from './workspace.mjs'

export async function runCommand() {
  prepare({ scope: 'cli', target: 'cli' })

  // A script of npm runs in the root; paths are meant from where the person stands.
  const { npm_lifecycle_event: script, INIT_CWD: stands } = process.env
  if (script === 'start' && stands) process.chdir(stands)

  const main = join(ROOT, 'packages/cli/dist/main.js')
  process.argv[1] = main
  await import(pathToFileURL(main).href)
}
