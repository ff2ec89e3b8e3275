// The commands and their options. A command or option stands here only once it works.

import { Command } from 'commander'
import { check } from './commands/check.js'
import { load } from './commands/load.js'
import { ride } from './commands/ride.js'
import { schema } from './commands/schema.js'
import { series } from './commands/series.js'
import { trace } from './commands/trace.js'
import { DEFAULT_HOUSE } from './default-house.js'
import { DEFAULT_WORDS, type Words } from './options.js'

const HOUSE = `house file, YAML or JSON (default: ${DEFAULT_HOUSE.name})`

export function buildProgram(): Command {
  const program = new Command('tideover')
    .description('How long does this house last through a power cut? Minute by minute.')
    .showHelpAfterError('(tideover --help lists what is known)')
    .exitOverride()

  withScenario(
    program
      .command('ride', { isDefault: true })
      .description('how long the house lasts when a cut starts in a month')
      .argument('[house]', HOUSE)
      .option('--month <1..12>', 'month in which the cut starts', '1')
      .option('--hours <h>', 'length of the cut [h]', '24')
      .option('--share <0..1>', 'share of starts that must last the whole cut')
      .option('--years <n>', 'synthetic years of the typical sky', DEFAULT_WORDS.years)
      .option('--threads <n>', 'threads to work on (default: one for each processor)')
      .option('--defaults', 'list the defaults and the records that the answer rests on')
      .option('--json', 'one JSON object on standard output'),
  ).action(ride)

  withScenario(
    program
      .command('trace')
      .description('one cut, minute by minute, with its event list')
      .argument('[house]', HOUSE)
      .requiredOption('--start <ISO>', 'start of the cut, such as 2025-01-14T18:00Z')
      .option('--hours <h>', 'length of the cut [h]', '24')
      .option(
        '--also <interval...>',
        'further cuts of the same run, ISO 8601 such as 2025-01-14T21:00/PT2H',
      )
      .option('--after <h>', 'hours to follow with the grid back [h]', '0')
      .option('--synthetic-year <k>', 'number of the year, for skies that have several')
      .option('--years <n>', 'synthetic years of the typical sky', DEFAULT_WORDS.years)
      .option('--csv <file>', 'minute by minute as CSV; - for standard output')
      .option('--json', 'states, events and totals as one JSON object'),
  ).action(trace)

  program
    .command('series')
    .description('the sun, sky, array and load columns that feed a trace')
    .argument('[house]', HOUSE)
    .requiredOption('--from <date>', 'first local day, such as 2025-01-14')
    .requiredOption('--to <date>', 'last local day')
    .option('--sky <sky>', 'dull, none, typical, clear or file', DEFAULT_WORDS.sky)
    .option('--synthetic-year <k>', 'number of the year, for skies that have several')
    .option('--winters <R>', 'return period of the skies dull and none', DEFAULT_WORDS.winters)
    .option('--seed <n>', 'seed of all chance')
    .option('--csv <file>', 'minute by minute as CSV; - for standard output')
    .option('--json', 'daily totals as one JSON object')
    .action(series)

  program
    .command('check')
    .description('whether the installation holds: findings, gravest first')
    .argument('[house]', HOUSE)
    .option('--modules <k>', 'battery modules (default: those of the house)')
    .option('--json', 'one JSON object on standard output')
    .action(check)

  program
    .command('load')
    .description('the load table, to be checked with the customer')
    .argument('[house]', HOUSE)
    .option('--kinds', 'the table of typical loads in place of a house')
    .option('--json', 'one JSON object on standard output')
    .action(load)

  withScenario(
    program
      .command('report')
      .description("the customer's page: one file that works offline and plays cuts again")
      .argument('[house]', HOUSE)
      .requiredOption('--out <file>', 'where to write the page, such as my-house.html')
      .option('--month <1..12>', 'month of the promise (default: the darkest, January or July)')
      .option('--hours <h>', 'length of the cut [h]', '24')
      .option('--years <n>', 'synthetic years of the typical sky', DEFAULT_WORDS.years)
      .option('--threads <n>', 'threads to work on (default: one for each processor)'),
    'sky of the promise: dull or none',
  ).action(async (path: string | undefined, words: Words) => {
    // Only this command needs the page.
    const { report } = await import('./commands/report.js')
    await report(path, words)
  })

  program
    .command('schema')
    .description('the JSON Schema of a house file, for editors')
    .action(schema)

  // Errors of a command are thrown, not printed twice.
  for (const command of program.commands) command.exitOverride()
  return program
}

/** What is asked beside the house. */
function withScenario(
  command: Command,
  sky = 'sky of the promise: dull, none, typical, clear or file',
): Command {
  return command
    .option('--sky <sky>', sky, DEFAULT_WORDS.sky)
    .option('--modules <k>', 'battery modules (default: those of the house)')
    .option(
      '--start-soc <charge>',
      'charge at the start: reserve, full or 0..1',
      DEFAULT_WORDS['start-soc'],
    )
    .option('--health <0..1>', 'capacity that age has left (default: that of the house)')
    .option('--winters <R>', 'return period of the skies dull and none', DEFAULT_WORDS.winters)
    .option('--seed <n>', 'seed of all chance (default: that of the house)')
}
