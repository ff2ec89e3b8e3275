// A first word that is neither a command nor a house.

import { existsSync } from 'node:fs'
import { type Problem, printable } from '@tideover/core'
import type { Command } from 'commander'

/**
 * `rode my-house.yaml` would else be a ride with one argument too many. A name with a point or a
 * slash is taken for a file, whose absence is told where it is read.
 *
 * @param argv  as of the process: the program, the script, the words
 */
export function mistypedCommand(program: Command, argv: readonly string[]): Problem[] {
  const word = argv[2]
  if (word === undefined || word.startsWith('-') || /[./\\]/.test(word)) return []
  const names = [...program.commands.map((command) => command.name()), 'help']
  if (names.includes(word) || existsSync(word)) return []
  const need = `a command (${names.join(', ')}) or a house file`
  return [{ where: 'the first word', need, got: printable(word) }]
}
