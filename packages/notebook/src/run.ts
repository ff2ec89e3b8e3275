// Runs notebooks without Jupyter: tslab's own converter and executor in a child process, one for
// all notebooks of a folder, for the first costs seconds and each further one less than one.

import { type ChildProcess, fork } from 'node:child_process'
import { basename, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Output } from './notebook-file.js'

export type { Output } from './notebook-file.js'

/** One code cell that ran. */
export interface CellRun {
  /** Number among the code cells, from 1. */
  readonly cell: number
  readonly source: string
  readonly outputs: readonly Output[]
  /** What the compiler or the cell said when it failed, in full. */
  readonly error: string | null
  readonly ms: number
}

export interface NotebookRun {
  /** Path of the notebook. */
  readonly path: string
  /** Cells up to the first that failed. */
  readonly cells: readonly CellRun[]
  /** The values asked for by name, as the last cell left them. */
  readonly values: Readonly<Record<string, unknown>>
}

export interface RunOptions {
  /** Names of cell variables to hand back; each must be plain data. */
  readonly values?: readonly string[]
  /** A notebook that takes longer is ended. [s], default 300 */
  readonly mostSeconds?: number
}

export interface Runner {
  /** Runs one notebook of the folder from a clean start; rejects with a NotebookError. */
  run(file: string, options?: RunOptions): Promise<NotebookRun>
  close(): void
}

/** A cell failed. The message has the notebook, the cell, its source and the full error. */
export class NotebookError extends Error {
  constructor(
    message: string,
    readonly partial: NotebookRun,
  ) {
    super(message)
    this.name = 'NotebookError'
  }
}

/** What travels to the child and back. */
export interface Request {
  readonly path: string
  readonly values: readonly string[]
}
export type Reply =
  | { readonly kind: 'cell'; readonly run: CellRun }
  | { readonly kind: 'end'; readonly values: Record<string, unknown> }
  | { readonly kind: 'fault'; readonly text: string }

/**
 * A runner for the notebooks of one folder; their imports resolve from there.
 *
 * @example
 * const runner = startRunner('notebooks')
 * const { values } = await runner.run('first.ipynb', { values: ['share'] })
 */
export function startRunner(folder: string): Runner {
  let child: ChildProcess | null = null
  let last: Promise<unknown> = Promise.resolve()

  const start = () => {
    const program = fileURLToPath(new URL('./run-child.js', import.meta.url))
    child = fork(program, {
      cwd: folder,
      execArgv: [],
      serialization: 'advanced',
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    })
    return child
  }
  const close = () => {
    child?.kill()
    child = null
  }
  const runNext = async (file: string, options: RunOptions) => {
    try {
      return await runIn(child ?? start(), resolve(folder, file), options)
    } catch (error) {
      // A child that was ended or died is replaced; a failed cell leaves it in order.
      if (child === null || child.killed || child.exitCode !== null) close()
      throw error
    }
  }
  return {
    run(file, options = {}) {
      const run = last.then(() => runNext(file, options))
      last = run.catch(() => {})
      return run
    },
    close,
  }
}

function runIn(child: ChildProcess, path: string, options: RunOptions): Promise<NotebookRun> {
  const { values: names = [], mostSeconds = 300 } = options
  const cells: CellRun[] = []

  return new Promise((resolve, reject) => {
    const settle = (done: () => void) => {
      clearTimeout(timer)
      child.off('message', hear)
      child.off('exit', exited)
      done()
    }
    const fail = (text: string) => {
      const partial = { path, cells, values: {} }
      settle(() => reject(new NotebookError(`${basename(path)}${text}`, partial)))
    }
    const hear = (reply: Reply) => {
      if (reply.kind === 'end') settle(() => resolve({ path, cells, values: reply.values }))
      else if (reply.kind === 'fault') fail(`: ${reply.text}`)
      else {
        cells.push(reply.run)
        if (reply.run.error !== null) fail(failedCell(reply.run, reply.run.error))
      }
    }
    const exited = (code: number | null) =>
      fail(`, cell ${cells.length + 1}: the process ended with ${code ?? 'a signal'}`)
    const timer = setTimeout(() => {
      child.off('exit', exited)
      child.kill('SIGKILL')
      fail(`, cell ${cells.length + 1}: still running after ${mostSeconds} s`)
    }, mostSeconds * 1000)

    child.on('message', hear)
    child.on('exit', exited)
    child.send({ path, values: names } satisfies Request)
  })
}

function failedCell({ cell, source }: CellRun, error: string): string {
  const lines = source.split('\n').map((line, index) => `  ${index + 1} | ${line}`)
  return `, cell ${cell}:\n${lines.join('\n')}\n\n${error}`
}
