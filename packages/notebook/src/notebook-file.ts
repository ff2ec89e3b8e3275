// Reading and writing a notebook file (nbformat 4), as far as running one needs.

import { readFileSync, writeFileSync } from 'node:fs'

/** What a cell put out: printed text, or something displayed by media type. */
export type Output =
  | { readonly kind: 'text'; readonly stream: 'stdout' | 'stderr'; readonly text: string }
  | { readonly kind: 'display'; readonly data: Readonly<Record<string, string>> }

interface Cell {
  cell_type: string
  source: string | string[]
  outputs?: unknown[]
  execution_count?: number | null
}

export interface NotebookFile {
  cells: Cell[]
}

export function readNotebook(path: string): NotebookFile {
  return JSON.parse(readFileSync(path, 'utf8')) as NotebookFile
}

/** Sources of the code cells, in order. */
export function codeCells(notebook: NotebookFile): string[] {
  return notebook.cells.filter(isCode).map(({ source }) => [source].flat().join(''))
}

/** Puts outputs, one list a code cell, into the file. */
export function writeOutputs(path: string, outputs: readonly (readonly Output[])[]): void {
  const notebook = readNotebook(path)
  notebook.cells.filter(isCode).forEach((cell, index) => {
    cell.outputs = (outputs[index] ?? []).map(asNbformat)
    cell.execution_count = index + 1
  })
  writeFileSync(path, `${JSON.stringify(notebook, null, 1)}\n`)
}

/** Takes all outputs out of the file, as notebooks stand in a repository. */
export function stripOutputs(path: string): void {
  const notebook = readNotebook(path)
  for (const cell of notebook.cells.filter(isCode)) {
    cell.outputs = []
    cell.execution_count = null
  }
  writeFileSync(path, `${JSON.stringify(notebook, null, 1)}\n`)
}

function isCode(cell: Cell): boolean {
  return cell.cell_type === 'code'
}

function asNbformat(output: Output): object {
  return output.kind === 'text'
    ? { output_type: 'stream', name: output.stream, text: output.text }
    : { output_type: 'display_data', data: output.data, metadata: {} }
}
