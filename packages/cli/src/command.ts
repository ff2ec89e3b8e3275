// The command: arguments in, an answer out, an exit code a script can rely on.
//
// 0 answered, 2 the input is at fault (one line for each fault), 1 anything else.

import { InputError, problemLine } from '@tideover/core'
import { CommanderError } from 'commander'
import { eatenOptions } from './eaten-options.js'
import { mistypedCommand } from './mistyped-command.js'
import { buildProgram } from './program.js'

/** @param argv  of the process */
export async function run(argv: string[]): Promise<void> {
  try {
    const program = buildProgram()
    const slips = [...eatenOptions(program, process.env), ...mistypedCommand(program, argv)]
    if (slips.length > 0) throw new InputError(slips)
    await program.parseAsync(argv)
  } catch (error) {
    process.exitCode = exitCodeOf(error)
  }
}

function exitCodeOf(error: unknown): number {
  if (error instanceof InputError) {
    for (const problem of error.problems) process.stderr.write(`${problemLine(problem)}\n`)
    return 2
  }
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2
  process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : error}\n`)
  return 1
}
