// Options that npm took for itself because nothing parted them from its own.

import type { Problem } from '@tideover/core'
import type { Command } from 'commander'

/**
 * `npm start ride --month 6` hands over `ride 6` and keeps `--month`: the answer would be January's.
 *
 * @param env  of a script of npm, where it leaves what it took
 */
export function eatenOptions(
  program: Command,
  env: Readonly<Record<string, string | undefined>>,
): Problem[] {
  if (env.npm_lifecycle_event !== 'start') return []
  const names = program.commands.flatMap(({ options }) => options.map(({ long }) => long ?? ''))
  return [...new Set(names)]
    .filter((name) => env[`npm_config_${name.slice(2).replaceAll('-', '_')}`] !== undefined)
    .map((name) => ({
      where: name,
      need: `after two dashes of its own (npm start -- ride ${name} …)`,
      got: 'it before them, where npm keeps it',
    }))
}
