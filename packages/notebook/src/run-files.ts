// Runs notebook files, all of notebooks/ where none is named.

import { readdirSync } from 'node:fs'
import { basename, dirname, resolve } from 'node:path'
import { type NotebookRun, startRunner } from './run.js'

/** Paths of the notebooks that are meant. */
export function notebookPaths(named: readonly string[]): string[] {
  const found = () =>
    readdirSync('notebooks')
      .filter((name) => name.endsWith('.ipynb'))
      .sort()
      .map((name) => `notebooks/${name}`)
  return (named.length > 0 ? named : found()).map((path) => resolve(path))
}

/** Runs them one after another, says how long each took, and what failed. */
export async function runFiles(
  named: readonly string[],
): Promise<{ ran: NotebookRun[]; failed: number }> {
  const paths = notebookPaths(named)
  const ran: NotebookRun[] = []
  for (const folder of new Set(paths.map(dirname))) {
    const runner = startRunner(folder)
    for (const path of paths.filter((one) => dirname(one) === folder)) {
      try {
        const run = await runner.run(basename(path))
        const seconds = run.cells.reduce((sum, { ms }) => sum + ms / 1000, 0)
        console.log(`${basename(path)}: ${run.cells.length} cells, ${seconds.toFixed(1)} s`)
        ran.push(run)
      } catch (error) {
        console.error(error instanceof Error ? error.message : error)
      }
    }
    runner.close()
  }
  return { ran, failed: paths.length - ran.length }
}
