// The child of run.ts: one converter, one executor, one notebook after another.

import { performance } from 'node:perf_hooks'
import { format } from 'node:util'
import { createConverter } from 'tslab/dist/converter.js'
import { createExecutor } from 'tslab/dist/executor.js'
import jupyter from 'tslab/dist/jupyter.js'
import { codeCells, type Output, readNotebook } from './notebook-file.js'
import type { CellRun, Reply, Request } from './run.js'
import { unwatched } from './unwatched.js'

unwatched()
const folder = process.cwd()
const converter = createConverter()
const faults: string[] = []
const executor = createExecutor(
  folder,
  { node: converter, browser: converter, close: () => converter.close() },
  {
    log: (...parts) => console.log(...parts),
    error: (...parts) => faults.push(readable(format(...parts))),
  },
)

let outputs: Output[] = []
const displayed = new Map<string, number>()

process.stdout.write = printed('stdout')
process.stderr.write = printed('stderr')
jupyter.lastWriteDisplayData = ({ data, transient }, update) => {
  const id = transient?.display_id
  const output: Output = { kind: 'display', data: { ...data } as Record<string, string> }
  const before = update && id !== undefined ? displayed.get(id) : undefined
  if (before !== undefined && before < outputs.length) outputs[before] = output
  else outputs.push(output)
  if (id !== undefined && before === undefined) displayed.set(id, outputs.length - 1)
}

process.on('message', async (request: Request) => {
  try {
    await runNotebook(request)
  } catch (error) {
    reply({ kind: 'fault', text: readable(format(error)) })
  }
})
process.on('disconnect', () => process.exit(0))

async function runNotebook({ path, values }: Request): Promise<void> {
  executor.reset()
  const sources = codeCells(readNotebook(path))
  for (const [index, source] of sources.entries()) {
    const run = await runCell(index + 1, source)
    reply({ kind: 'cell', run })
    if (run.error !== null) return
  }
  const asked = values.map((name) => [name, executor.locals[name]])
  reply({ kind: 'end', values: Object.fromEntries(asked) })
}

async function runCell(cell: number, source: string): Promise<CellRun> {
  outputs = []
  displayed.clear()
  faults.length = 0
  const from = performance.now()
  const ok = await executor.execute(source)
  const error = ok ? null : faults.join('\n') || 'failed without a word'
  return { cell, source, outputs, error, ms: performance.now() - from }
}

function reply(message: Reply): void {
  process.send!(message)
}

function printed(stream: 'stdout' | 'stderr') {
  return (chunk: string | Uint8Array): boolean => {
    const text = typeof chunk === 'string' ? chunk : Buffer.from(chunk).toString('utf8')
    const last = outputs.at(-1)
    if (last?.kind === 'text' && last.stream === stream) {
      outputs[outputs.length - 1] = { ...last, text: last.text + text }
    } else outputs.push({ kind: 'text', stream, text })
    return true
  }
}

/** Without the frames of what runs the cell: they tell its author nothing. */
function readable(text: string): string {
  const foreign = /^\s+at .*(node_modules[\\/](\.pnpm[\\/])?tslab|node:(vm|internal)|run-child)/
  return text
    .split('\n')
    .filter((line) => !foreign.test(line))
    .join('\n')
}
