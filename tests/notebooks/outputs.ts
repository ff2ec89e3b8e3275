// Notebooks run as their readers would, and what their cells put out.

import { fileURLToPath } from 'node:url'
import { type NotebookRun, type Output, type Runner, startRunner } from '@tideover/notebook/run'
import { afterAll } from 'vitest'

/** A runner of the project's notebooks, for one file of tests: the first one costs seconds. */
export function notebookRunner(): Runner {
  const runner = startRunner(fileURLToPath(new URL('../../notebooks', import.meta.url)))
  afterAll(() => runner.close())
  return runner
}

/** Tables and charts of one cell, or of all. */
export function htmlOf(run: NotebookRun, cell?: number): string {
  return outputsOf(run, cell)
    .map((one) => (one.kind === 'display' ? (one.data['text/html'] ?? '') : ''))
    .join('\n')
}

/** What was printed by one cell, or by all. */
export function printedBy(run: NotebookRun, cell?: number): string {
  return outputsOf(run, cell)
    .map((one) => (one.kind === 'text' ? one.text : ''))
    .join('')
}

export function chartsIn(html: string): number {
  return html.match(/data-tideover-figure="[0-9a-f]{16}"/g)?.length ?? 0
}

export function tablesIn(html: string): number {
  return html.match(/<table>/g)?.length ?? 0
}

function outputsOf({ cells }: NotebookRun, cell?: number): readonly Output[] {
  return cells
    .filter((one) => cell === undefined || one.cell === cell)
    .flatMap((one) => one.outputs)
}
