// Wrong input: exit 2, one line a fault, nothing on standard output. Slips: answered with a warning.

import { InputError } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { buildProgram } from '../../packages/cli/src/program.js'
import { folder, SMALL_HOUSE, tideover } from './command.js'

const files = folder()
const small = files.write('small.yaml', SMALL_HOUSE)
const START = ['--start', '2025-01-14T18:00Z']

/** `HOUSE` stands for the small house, so that titles are the same everywhere. */
function withHouse(args: readonly string[]): string[] {
  return args.map((arg) => (arg === 'HOUSE' ? small : arg))
}

async function faults(...args: string[]): Promise<string[]> {
  const { status, out, err } = await tideover(...args)
  expect(out).toBe('')
  expect(status).toBe(2)
  expect(err.endsWith('\n')).toBe(true)
  return err
    .trimEnd()
    .split('\n')
    .map((line) => line.replaceAll(`${files.path}/`, ''))
}

describe.concurrent('a first word', () => {
  it('that is no command and no house is told with the commands there are', async () => {
    expect(await faults('rode', small)).toEqual([
      'the first word must be a command (ride, trace, starts, year, stacks, switch-off, now, series, check, load, doubts, generator, report, schema, help) ' +
        'or a house file, got "rode"',
    ])
  })

  it('that may be a file is looked for as one', async () => {
    expect(await faults('rode.yaml')).toEqual([
      'rode.yaml must be a file that can be read, got no such file',
    ])
  })
})

describe.concurrent('a house file', () => {
  it.each([
    [
      'that is missing',
      'nowhere.yaml',
      null,
      /^nowhere\.yaml must be a file that can be read, got no such file$/,
    ],
    [
      'that is empty',
      'empty.yaml',
      '',
      /^empty\.yaml:1 must be a house in YAML or JSON, got an empty file$/,
    ],
    [
      'with tabs',
      'tabs.yaml',
      'house: x\nsite:\n\tlatitudeDeg: 1\n',
      /^tabs\.yaml:3 must be indented by spaces, got a tab$/,
    ],
    ['that is a list', 'list.yaml', '- a\n', /^list\.yaml:1 must be a group of fields/],
    ['cut short', 'short.json', '{ "house": "x"', /^short\.json:1 must be complete/],
  ])('%s', async (_, name, text, line) => {
    if (text !== null) files.write(name, text)
    const lines = await faults('ride', `${files.path}/${name}`)
    expect(lines[0]).toMatch(line)
  })

  it('that is a directory', async () => {
    const lines = await faults('ride', files.path)
    expect(lines).toEqual([`${files.path} must be a file that can be read, got a directory`])
  })

  it('with two faults hears of both, with their lines', async () => {
    const text = SMALL_HOUSE.replace('latitudeDeg: 58.2', 'latitudeDeg: 91').replace(
      'Europe/London',
      'Europe/Stornoway',
    )
    files.write('where.yaml', text)
    expect(await faults('ride', `${files.path}/where.yaml`)).toEqual([
      'site.latitudeDeg (where.yaml:2) must be a number -90..90 [deg], got 91',
      'site.timezone (where.yaml:2) must be an IANA time zone such as Europe/London, got "Europe/Stornoway"',
    ])
  })
})

describe.concurrent('options', () => {
  it('every wrong one is told, each on its line', async () => {
    const lines = await faults(
      ...['ride', small, '--month', '13', '--hours', '-5', '--share', '80', '--sky', 'blue'],
      ...[
        '--modules',
        '0',
        '--health',
        '0',
        '--start-soc',
        'lots',
        '--years',
        '0',
        '--seed',
        '1.5',
      ],
    )
    expect(lines.sort()).toEqual([
      '--health must be a share > 0 and <= 1 or a percentage such as 80%, got "0"',
      '--hours must be a number > 0 and <= 720 [h], got "-5"',
      '--modules must be a whole number 1..100, got "0"',
      '--month must be a whole number 1..12, got "13"',
      '--seed must be a whole number 0..2147483647, got "1.5"',
      '--share must be a share 0..1 or a percentage such as 62%; for 80 % write 0.8 or 80%, got "80"',
      '--sky must be one of clear, typical, dull, none, file, got "blue"',
      '--start-soc must be reserve, full, a share 0..1 or a percentage such as 62%, got "lots"',
      '--years must be a whole number 1..200, got "0"',
    ])
  })

  it.each([
    [
      ['ride', 'HOUSE', '--hours', '1e9'],
      /^--hours must be a number > 0 and <= 720 \[h\], got "1e9"$/,
    ],
    [
      ['ride', 'HOUSE', '--modules', '9'],
      /^modules must be a whole number 1\.\.3, what the base allows, got 9$/,
    ],
    [
      ['ride', 'HOUSE', '--sky', 'file'],
      /^--sky must be one of dull, none, typical, clear: no sky\.file is named/,
    ],
    [
      ['trace', 'HOUSE', '--start', 'yesterday'],
      /^--start must be a time such as 2025-01-14T18:00Z, got "yesterday"$/,
    ],
    [
      ['trace', 'HOUSE', '--start', '18:00'],
      /^--start must be a day with its time such as 2025-01-14T18:00Z, got "18:00"$/,
    ],
    [
      ['ride', 'HOUSE', '--month', 'January'],
      /^--month must be a whole number 1\.\.12; January is 1, got "January"$/,
    ],
    [
      ['year', 'HOUSE', '--hours', '2d'],
      /^--hours must be a number > 0 and <= 720 \[h\]; 2 days are 48, got "2d"$/,
    ],
    [
      ['trace', 'HOUSE', '--start', '2024-06-01T00:00Z'],
      /^start must be a time in the house's year, 2025-01-01T00:00Z to 2025-12-31T23:59Z/,
    ],
    [
      ['trace', 'HOUSE', '--start', '2025-03-30T01:30'],
      /^--start must be a time that the clock of Europe\/London shows/,
    ],
    [
      ['trace', 'HOUSE', ...START, '--csv', '/nowhere/out.csv'],
      /^--csv must be a file that can be written/,
    ],
    [
      ['trace', 'HOUSE', ...START, '--sky', 'clear', '--synthetic-year', '3'],
      /^synthetic-year must be a whole number 0\.\.0, got 3$/,
    ],
    [
      ['trace', 'HOUSE', ...START, '--also', '2025-01-14T20:00'],
      /^--also must be a start and a duration such as 2025-01-14T21:00\/PT2H, got "2025-01-14T20:00"$/,
    ],
    [
      ['trace', 'HOUSE', ...START, '--also', '18:20/PT10M'],
      /^--also must be a start and a duration such as 2025-01-14T21:00\/PT2H, got "18:20\/PT10M"$/,
    ],
    [
      ['trace', 'HOUSE', ...START, '--also', '2026-01-20T10:00Z/PT10M'],
      /^start must be a time in the house's year, .*got "2026-01-20T10:00Z"$/,
    ],
    [
      ['trace', 'HOUSE', ...START, '--also', '2025-01-14T18:30/PT1H'],
      /^further cut must be after the cut before it has ended, at /,
    ],
    [
      ['series', 'HOUSE', '--from', '2025-02-30', '--to', '2025-03-01'],
      /^--from must be a day such as 2025-01-14, got "2025-02-30"$/,
    ],
    [
      ['series', 'HOUSE', '--from', '2025-03-31', '--to', '2025-03-30'],
      /^--to must be not before --from/,
    ],
    [
      ['series', 'HOUSE', '--from', '2024-12-31', '--to', '2025-01-02'],
      /^--from must be a day of 2025, the house's year/,
    ],
  ])('%j', async (args, line) => {
    // In this process: what the command throws is what its exit 2 prints.
    const run = buildProgram().parseAsync(['node', 'tideover', ...withHouse(args)])
    const error = await run.catch((thrown: unknown) => thrown)
    expect(error).toBeInstanceOf(InputError)
    expect((error as InputError).message.split('\n')).toHaveLength(1)
    expect((error as InputError).message).toMatch(line)
  })

  it.each([[['trace', 'HOUSE']], [['ride', 'HOUSE', '--mont', '1']], [['ride', 'HOUSE', 'more']]])(
    '%j is refused with what is known',
    async (args) => {
      const lines = await faults(...withHouse(args))
      expect(lines[0]).toMatch(/^error: /)
    },
  )
})

describe.concurrent('a meter file', () => {
  const withMeter = (name: string, csv: string): string => {
    files.write(`${name}.csv`, csv)
    const line = `  - { name: rest, tier: comfort, file: ${name}.csv }\n`
    return files.write(`${name}.yaml`, SMALL_HOUSE + line)
  }

  const hours = (count: number, without: (hour: number) => boolean): string => {
    const rows = ['time,kW']
    for (let hour = 0; hour < count; hour++) {
      if (without(hour)) continue
      const time = new Date(Date.UTC(2025, 0, 6) + hour * 3_600_000).toISOString()
      rows.push(`${time.slice(0, 16).replace('T', ' ')},0.4`)
    }
    return `${rows.join('\n')}\n`
  }

  it('with most of it missing is refused where the gap begins', async () => {
    const house = withMeter(
      'gap',
      hours(288, (hour) => hour >= 30 && hour < 200),
    )
    const lines = await faults('trace', house, ...START)
    expect(lines).toHaveLength(1)
    expect(lines[0]).toMatch(
      /^gap\.csv:32 \(file of rest\) must be a record that is not mostly gaps over 2 h .*2025-01-07 06:00$/,
    )
  })

  it('that is whole is taken', async () => {
    const house = withMeter(
      'whole',
      hours(288, () => false),
    )
    const { status, out } = await tideover('trace', house, ...START, '--hours', '1', '--csv', '-')
    expect(status).toBe(0)
    expect(Number(out.split('\n')[1]!.split(',')[2])).toBeCloseTo(0.4, 5)
  })

  it('that is missing is named', async () => {
    const house = files.write(
      'lost.yaml',
      `${SMALL_HOUSE}  - { name: rest, tier: comfort, file: lost.csv }\n`,
    )
    expect(await faults('trace', house, ...START)).toEqual([
      'lost.csv (file of rest) must be a file that can be read, got no such file',
    ])
  })
})

describe('a likely slip', () => {
  it('a fridge of 90 kW is answered and asked about', async () => {
    const text = SMALL_HOUSE.replace(
      '{ name: pump, tier: critical, w: 390 }',
      '{ name: fridge, tier: critical, w: 90000 }',
    )
    const house = files.write('fridge.yaml', text)
    const { status, out } = await tideover(
      ...['ride', house, '--hours', '1', '--years', '1', '--sky', 'none', '--json'],
    )
    expect(status).toBe(0)
    const { skies, slips } = JSON.parse(out)
    expect(skies.none.bestHours).toBe(0)
    expect(slips[0]).toMatch(/^fridge: 90000 W is a lot/)
  })
})

describe('help', () => {
  it('is an answer: exit 0, on standard output', async () => {
    for (const args of [['--help'], ['ride', '--help']]) {
      const { status, out, err } = await tideover(...args)
      expect([status, err]).toEqual([0, ''])
      expect(out).toMatch(/^Usage: tideover/)
    }
  })
})
