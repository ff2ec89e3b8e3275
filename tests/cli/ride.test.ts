// `ride`: the keys scripts rely on, figures by hand, and a trace that shows the same ride.

import { beforeAll, describe, expect, it } from 'vitest'
import { columnsOf, type Ended, folder, SMALL_HOUSE, tideover } from './command.js'

const house = folder().write('small.yaml', SMALL_HOUSE)
let ended: Ended
// biome-ignore lint/suspicious/noExplicitAny: what a script sees
let answer: any

beforeAll(async () => {
  ended = await tideover(
    ...['ride', house, '--month', '2', '--hours', '3', '--years', '2', '--share', '0.9', '--json'],
  )
  answer = JSON.parse(ended.out)
})

it('gives the same figures on one thread as on several', async () => {
  const asked = ['ride', house, '--month', '2', '--hours', '3', '--years', '4', '--json']
  const [one, three] = await Promise.all(
    ['1', '3'].map((threads) => tideover(...asked, '--threads', threads)),
  )
  expect(one!.out).toBe(three!.out)
  expect(JSON.parse(one!.out).skies.typical.starts).toBe(4 * 28 * 1440)
})

describe('ride --json', () => {
  it('is one object on standard output and nothing else', () => {
    expect(ended.status).toBe(0)
    expect(ended.err).toBe('')
  })

  it('has the keys of the contract', () => {
    for (const key of [
      ...['house', 'site', 'month', 'cutHours', 'modules', 'startSoc', 'health', 'years', 'seed'],
      ...['skies', 'bright', 'met', 'cautions', 'warnings'],
    ]) {
      expect(answer).toHaveProperty(key)
    }
    expect(answer.site).toEqual({
      latitudeDeg: 58.2,
      longitudeDeg: -6.4,
      elevationM: 25,
      timezone: 'Europe/London',
    })
    expect(answer.startSoc).toEqual({ kind: 'reserve', value: 0.5 })
    expect(Object.keys(answer.skies)).toEqual(['dull', 'none', 'typical', 'clear'])
    for (const sky of Object.values(answer.skies)) {
      for (const key of [
        ...['starts', 'share', 'shareByPattern', 'worstHours', 'p05Hours', 'medianHours'],
        ...[
          'bestHours',
          'worstStart',
          'atLeastHours',
          'hoursWithoutMean',
          'withoutSunHours',
          'loads',
        ],
      ]) {
        expect(sky).toHaveProperty(key)
      }
    }
    expect(answer.skies.dull.winters).toBe(10)
    for (const key of ['shareLow', 'shareHigh', 'worstHoursReturnWinters']) {
      expect(answer.skies.typical).toHaveProperty(key)
    }
    expect(answer.skies.none.loads).toEqual([
      {
        ...{ name: 'pump', toleratesMinutes: 0, share: 0, firstToFail: true },
        ...{
          worstHours: 166 / 60,
          medianHours: 166 / 60,
          toleranceBasis: null,
          keptShare: 0,
          wanted: true,
        },
      },
    ])
  })

  it('counts every minute of February, for typical skies in both years', () => {
    expect(answer.skies.dull.starts).toBe(28 * 1440)
    expect(answer.skies.none.starts).toBe(28 * 1440)
    expect(answer.skies.typical.starts).toBe(2 * 28 * 1440)
  })

  it('without sun every start lasts 166 minutes, as by hand', () => {
    const { none } = answer.skies
    for (const key of ['worstHours', 'p05Hours', 'medianHours', 'bestHours']) {
      expect(none[key] * 60).toBeCloseTo(166, 9)
    }
    expect(none.share).toBe(0)
    expect(none.hoursWithoutMean * 60).toBeCloseTo(180 - 166, 9)
    expect(none.worstStart).toBe('2025-02-01T00:00Z')
  })

  it('the plain hand figure: 1.4 kWh over 0.45 kW', () => {
    expect(answer.skies.dull.withoutSunHours).toBeCloseTo(1.4 / 0.45, 4)
  })

  it('the share is the least by pattern, and the target is not met', () => {
    for (const sky of Object.values(answer.skies) as { share: number; shareByPattern: object }[]) {
      const known = Object.values(sky.shareByPattern).filter((share) => share !== null)
      expect(sky.share).toBe(Math.min(...known))
    }
    expect(answer.met).toBe(false)
  })

  it('the interval is Wilson’s with the two years as trials', () => {
    const { share: p, shareLow, shareHigh } = answer.skies.typical
    // Limits solve |p - x| = z·sqrt(x(1-x)/n), Wilson 1927.
    const z = 1.959963984540054
    for (const x of [shareLow, shareHigh]) {
      expect(Math.abs(p - x)).toBeCloseTo(z * Math.sqrt((x * (1 - x)) / 2), 9)
    }
  })

  it('more light never shortens the worst of a throttling array', () => {
    const { dull, none, typical, clear } = answer.skies
    for (const sky of [dull, typical, clear]) {
      expect(sky.worstHours).toBeGreaterThanOrEqual(none.worstHours)
      expect(sky.bestHours).toBeGreaterThan(none.bestHours)
    }
    expect(answer.bright.share).toBe(1)
  })

  it('says what the small house left out', () => {
    const paths = answer.defaults.map(({ path }: { path: string }) => path)
    expect(paths).toContain('stack.health')
    expect(paths).not.toContain('stack.place')
  })
})

describe('a generator that may not start', () => {
  const set = 'generator: { ratedKw: 2, tankL: 20, start: automatic, startFailsShare: 0.2,'
  const burns = ' litresPerHour: { none: 0.6, half: 0.8, full: 1.4 } }'
  const mayFail = folder().write('may-fail.yaml', `${SMALL_HOUSE}${set}${burns}\n`)

  it('is told beside the share, and the worst start with the trace that shows it', async () => {
    const asked = ['--month', '2', '--hours', '6', '--years', '1', '--sky', 'none']
    const { out } = await tideover('ride', mayFail, ...asked)
    // From 2.25 kWh to 0.4 at 0.45 kW without the set, some 4 h: the cut needs one start.
    expect(out.replace(/\s+/g, ' ')).toContain(
      'Of the 20 in 100 such cuts that do not last, 20 are lost to a generator that does not start ' +
        '(20 of 100 tries). If each start succeeds it lasts to the end of every such cut; where ' +
        'the first fails, to the end of none of such cuts.',
    )
    expect(out).toContain('the generator does not start, pump gives out')
    const [, command] = /(trace .* --start-fails 1)\n/.exec(out)!
    const traced = await tideover(...command!.split(/\s+/))
    expect(traced.status).toBe(0)
    expect(traced.out).toContain('The generator does not start')
  })
})

describe('trace with the worst start and its year', () => {
  it.each(['dull', 'typical', 'none'])(
    'shows the ride of the answer to the minute: %s',
    async (sky) => {
      const { worstStart, worstYear, worstHours } = answer.skies[sky]
      const { status, out } = await tideover(
        ...['trace', house, '--start', worstStart, '--synthetic-year', String(worstYear)],
        ...[
          '--sky',
          sky,
          '--hours',
          String(Math.ceil(worstHours) + 2),
          '--years',
          '2',
          '--csv',
          '-',
        ],
      )
      expect(status).toBe(0)
      const { header, rows } = columnsOf(out)
      const served = header.indexOf('served_critical_kw')
      expect(rows[0]![0]).toBe(worstStart)
      expect(rows.findIndex((row) => row[served] === '0')).toBe(Math.round(worstHours * 60))
    },
  )

  it('without a year `dull` chooses the one of the answer, for a cut as long', async () => {
    const { worstStart, worstYear } = answer.skies.dull
    const { out } = await tideover('trace', house, '--start', worstStart, '--hours', '3', '--json')
    expect(JSON.parse(out).syntheticYear).toBe(worstYear)
  })
})
