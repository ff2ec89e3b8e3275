// The commands and their options. A command or option stands here only once it works.

import { APART_DAYS, YEAR_YEARS } from '@tideover/core'
import { Command } from 'commander'
import { check } from './commands/check.js'
import { doubts } from './commands/doubts.js'
import { generator } from './commands/generator.js'
import { load } from './commands/load.js'
import { now } from './commands/now.js'
import { ride } from './commands/ride.js'
import { schema } from './commands/schema.js'
import { series } from './commands/series.js'
import { stacks } from './commands/stacks.js'
import { starts } from './commands/starts.js'
import { switchOff } from './commands/switch-off.js'
import { trace } from './commands/trace.js'
import { year } from './commands/year.js'
import { DEFAULT_HOUSE } from './default-house.js'
import { DEFAULT_WORDS, STACKS_YEARS, type Words } from './options.js'

const HOUSE = `house file, YAML or JSON (default: ${DEFAULT_HOUSE.name})`

const MONTH = 'month in which the cut starts (default: the darkest, January or July)'

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
      .option('--share <0..1>', 'share of starts that must last the whole cut, or such as 90%')
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
      .option('--start-fails <0..1>', 'share of the generator starts that fail: 1 all, 0 none')
      .option('--years <n>', 'synthetic years of the typical sky', DEFAULT_WORDS.years)
      .option('--csv <file>', 'minute by minute as CSV; - for standard output')
      .option('--json', 'states, events and totals as one JSON object'),
  ).action(trace)

  withScenario(
    program
      .command('starts')
      .description('the ride of every start of a month, or of the year, as CSV')
      .argument('[house]', HOUSE)
      .option('--month <1..12>', 'month in which the cut starts (default: the whole year)')
      .option('--hours <h>', 'length of the cut [h]', '24')
      .option('--synthetic-year <k>', 'number of the year, for skies that have several')
      .option('--years <n>', 'synthetic years of the typical sky', DEFAULT_WORDS.years)
      .option('--csv <file>', 'one row for each minute as CSV; - for standard output')
      .option('--json', 'what the rows say in sum, as one JSON object'),
  ).action(starts)

  withScenario(
    program
      .command('year')
      .description(
        'the worst of the year: months by the hour, the worst starts and what cures them',
      )
      .argument('[house]', HOUSE)
      .option('--hours <h>', 'length of the cut [h]', '24')
      .option('--years <n>', 'synthetic years of the typical sky', String(YEAR_YEARS))
      .option('--apart <d>', 'days between two worst starts', String(APART_DAYS))
      .option('--json', 'one JSON object on standard output'),
  ).action(year)

  withScenario(
    program
      .command('stacks')
      .description('how many battery modules, and the next step for another day')
      .argument('[house]', HOUSE)
      .option('--month <1..12>', MONTH)
      .option('--hours <h>', 'length of the cut [h]', '24')
      .option('--share <0..1>', 'share of starts that must last the whole cut, or such as 90%')
      .option('--years <n>', 'synthetic years of the typical sky', STACKS_YEARS)
      .option('--defaults', 'list the defaults and the records that the answer rests on')
      .option('--json', 'one JSON object on standard output'),
    {
      sky: 'sky of the promise: dull, none, typical or file',
      modules: 'battery modules that the next steps start from (default: those of the house)',
    },
  ).action(stacks)

  withScenario(
    program
      .command('switch-off')
      .description('what to switch off first, and what a kettle costs in minutes')
      .argument('[house]', HOUSE)
      .option('--month <1..12>', MONTH)
      .option('--hours <h>', 'length of the cut [h]', '24')
      .option('--without-generator', 'leave the generator out')
      .option('--defaults', 'list the defaults and the records that the answer rests on')
      .option('--json', 'one JSON object on standard output'),
    { ...SCENARIO, sky: 'sky of the promise: dull or none' },
  ).action(switchOff)

  program
    .command('now')
    .description('we are off, the battery says so much: how long, and what to switch off')
    .argument('[house]', HOUSE)
    .requiredOption('--soc <charge>', 'what the display says: 0..1, or such as 62%')
    .option('--at <ISO>', 'now, such as 2025-01-14T18:00 (default: the clock of this machine)')
    .option('--hours <h>', 'how far to look ahead [h]', '48')
    .option('--modules <k>', 'battery modules (default: those of the house)')
    .option('--health <0..1>', 'capacity that age has left (default: that of the house)')
    .option('--winters <R>', 'return period of the skies dull and none', DEFAULT_WORDS.winters)
    .option('--seed <n>', 'seed of all chance (default: that of the house)')
    .option('--defaults', 'list the defaults and the records that the answer rests on')
    .option('--json', 'one JSON object on standard output')
    .action(now)

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
      .command('doubts')
      .description('how sure the answer is: what moves it most, and when it expires')
      .argument('[house]', HOUSE)
      .option('--month <1..12>', MONTH)
      .option('--hours <h>', 'length of the cut [h]', '24')
      .option(
        '--share <0..1>',
        'share of starts to be held, or such as 90% (default: ten points less)',
      )
      .option('--years <n>', 'synthetic years of the typical sky', '5')
      .option('--json', 'one JSON object on standard output'),
  ).action(doubts)

  withScenario(
    program
      .command('generator')
      .description('how much fuel to store for a cut of some days, and who must be there')
      .argument('[house]', HOUSE)
      .option('--days <n>', 'length of the cut [days]', '3')
      .option('--month <1..12>', 'month to look at closely (default: the one that takes most)')
      .option('--quiet <from-to>', 'hours in which it should not run, such as 22:00-07:00')
      .option('--start-fails <0..1>', 'share of its starts that fail')
      .option('--hours-between-failures <h>', 'mean running hours between failures [h]')
      .option('--set <kW>', 'rating of a set to suppose where the house has none [kW]')
      .option('--years <n>', 'synthetic years of the typical sky', '5')
      .option('--json', 'one JSON object on standard output'),
  ).action(generator)

  withScenario(
    program
      .command('report')
      .description("the customer's page: one file that works offline and plays cuts again")
      .argument('[house]', HOUSE)
      .requiredOption('--out <file>', 'where to write the page, such as my-house.html')
      .option('--papers <file>', 'where to write the papers, five sheets of A4 to print')
      .option('--month <1..12>', 'month of the promise (default: the darkest, January or July)')
      .option('--hours <h>', 'length of the cut [h]', '24')
      .option('--years <n>', 'synthetic years of the typical sky', DEFAULT_WORDS.years)
      .option('--threads <n>', 'threads to work on (default: one for each processor)'),
    { ...SCENARIO, sky: 'sky of the promise: dull or none' },
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

const SCENARIO = {
  sky: 'sky of the promise: dull, none, typical, clear or file',
  modules: 'battery modules (default: those of the house)',
}

/** What is asked beside the house. */
function withScenario(command: Command, help = SCENARIO): Command {
  return command
    .option('--sky <sky>', help.sky, DEFAULT_WORDS.sky)
    .option('--modules <k>', help.modules)
    .option(
      '--start-soc <charge>',
      'charge at the start: reserve, full or 0..1',
      DEFAULT_WORDS['start-soc'],
    )
    .option('--health <0..1>', 'capacity that age has left (default: that of the house)')
    .option('--winters <R>', 'return period of the skies dull and none', DEFAULT_WORDS.winters)
    .option('--seed <n>', 'seed of all chance (default: that of the house)')
}
