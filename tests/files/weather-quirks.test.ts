// Quirks of weather files as the world has them, each by name.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { checkHouse, prepare } from '@tideover/core'
import { readWeather, weatherFromText } from '@tideover/files'
import { describe, expect, it } from 'vitest'
import { recordClearness } from '../../packages/core/src/sky/record.js'
import { plainHouse } from '../core/plain-house.js'
import { refusal } from './problems.js'

const SAMPLES = new URL('../../data-samples/', import.meta.url).pathname
const HOUR_MS = 3_600_000

/** Hourly rows of a table, stamp and value. */
function hours(n: number, stamp: (i: number) => string, value: (i: number) => unknown = String) {
  return Array.from({ length: n }, (_, i) => `${stamp(i)},${value(i)}\n`).join('')
}

const iso = (i: number, from = Date.UTC(2023, 0, 1)): string =>
  new Date(from + i * HOUR_MS).toISOString().slice(0, 16)

/** EPW of some rows, each a list of year, month, day, hour, minute and global irradiance. */
function epw(rows: readonly (readonly number[])[], comment = '', periods = '1,1'): string {
  const head = [
    'LOCATION,AMSTERDAM,-,NLD,IWEC Data,062400,52.30,4.77,1.0,-2.0',
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    `COMMENTS 1,${comment}`,
    'COMMENTS 2,',
    `DATA PERIODS,${periods},Data,Sunday, 1/ 1,12/31`,
  ]
  const data = rows.map(([year, month, day, hour, minute, ghi]) => {
    const row: (string | number)[] = new Array(35).fill(0)
    row.splice(0, 6, year!, month!, day!, hour!, minute!, '?9?9')
    row[13] = ghi!
    return row.join(',')
  })
  return `${[...head, ...data].join('\r\n')}\r\n`
}

describe('the time of a row', () => {
  it('24:00 is the end of its day', () => {
    const stamp = (i: number): string => {
      const day = String(1 + Math.floor(i / 24)).padStart(2, '0')
      return `2023-06-${day} ${String((i % 24) + 1).padStart(2, '0')}:00`
    }
    const text = `# utc_offset_hours: 1\nhour ending,ghi_w_m2\n${hours(48, stamp)}`
    const record = weatherFromText(text, 'w')
    expect(record.startMs).toBe(Date.UTC(2023, 5, 1))
    expect([...record.ghi]).toEqual(Array.from({ length: 48 }, (_, i) => i))
  })

  it('standard time without clock change: both change days have their 24 hours', () => {
    const text = `# utc_offset_hours: -5\ntime,ghi_w_m2\n${hours(8760, iso, (i) => i % 1000)}`
    const record = weatherFromText(text, 'w')
    expect(record.utcOffsetMinutes).toBe(-300)
    expect(record.ghi).toHaveLength(8760)
    expect(record.notes.join(' ')).not.toMatch(/gap|repeated|offset/)
    // 12 March and 5 November 2023, 02:00, hours that a wall clock skips and repeats.
    for (const day of [70, 308]) {
      expect(record.ghi[24 * day + 2]).toBe((24 * day + 2) % 1000)
    }
  })

  it('an offset of half an hour is taken, and told', () => {
    const record = weatherFromText(`time,ghi_w_m2\n${hours(24, (i) => `${iso(i)}+05:30`)}`, 'w')
    expect(record.utcOffsetMinutes).toBe(330)
    expect(record.notes.join(' ')).toContain('UTC+5:30')
  })

  it('rows that come twice are counted and left out, the first one kept', () => {
    const rows = hours(24, (i) => `${iso(i)}Z`).split('\n')
    rows.splice(6, 0, `${iso(5)}Z,999`)
    const record = weatherFromText(`time,ghi_w_m2\n${rows.join('\n')}`, 'w')
    expect(record.ghi[5]).toBe(5)
    expect(record.notes).toContain('1 row of a repeated time or of a leap day left out.')
  })
})

describe('EPW', () => {
  const day = (minute: number, year = 1995, month = 1, date = 1) =>
    Array.from({ length: 24 }, (_, h) => [year, month, date, h + 1, minute, 10 * h])

  it.each([0, 60, 30])(
    'minute %d of an hourly row says nothing: hour 1 is midnight to one',
    (m) => {
      const record = weatherFromText(epw(day(m)), 'w')
      expect(record.startMs).toBe(Date.UTC(1995, 0, 1))
      expect([record.ghi[0], record.ghi[23]]).toEqual([0, 230])
    },
  )

  it('four rows an hour end at their minute', () => {
    const rows = Array.from({ length: 96 }, (_, i) => {
      return [1995, 1, 1, 1 + Math.floor(i / 4), 15 * ((i % 4) + 1), i]
    })
    const record = weatherFromText(epw(rows, '', '1,4'), 'w')
    expect(record.stepMinutes).toBe(15)
    expect(record.startMs).toBe(Date.UTC(1995, 0, 1))
    expect(record.ghi[95]).toBe(95)
  })

  it('a 29 February among mixed source years is left out, and told', () => {
    const rows = [...day(0, 1988, 2, 28), ...day(0, 1988, 2, 29), ...day(0, 1979, 3, 1)]
    const record = weatherFromText(epw(rows), 'w')
    expect(record.typicalYear).toBe(true)
    expect(record.ghi).toHaveLength(48)
    expect(record.notes).toContain('24 rows of a repeated time or of a leap day left out.')
  })

  it('bytes that are no UTF-8 in a comment do not matter', () => {
    const folder = mkdtempSync(join(tmpdir(), 'weather-'))
    const path = join(folder, 'w.epw')
    writeFileSync(path, Buffer.from(epw(day(0), 'M\xe9t\xe9o \xa9 \x93\x94'), 'latin1'))
    const record = readWeather(path)
    rmSync(folder, { recursive: true })
    expect(record.ghi).toHaveLength(24)
    expect(record.name).toBe('EPW 062400 (AMSTERDAM)')
  })

  it('a mark of UTF-8 before LOCATION does not hide what it is', () => {
    const folder = mkdtempSync(join(tmpdir(), 'weather-'))
    const path = join(folder, 'w.epw')
    writeFileSync(path, `\uFEFF${epw(day(0))}`)
    expect(readWeather(path).site?.latitudeDeg).toBe(52.3)
    rmSync(folder, { recursive: true })
  })
})

describe('gaps', () => {
  const table = (missing: (i: number) => boolean): string =>
    `time,ghi_w_m2,air_c\n${hours(
      72,
      (i) => `${iso(i)}Z`,
      (i) => `${missing(i) ? '' : i},10`,
    )}`

  it('three hours are filled by a straight line and counted', () => {
    const record = weatherFromText(
      table((i) => (i >= 10 && i < 13) || i === 40),
      'w',
    )
    expect([...record.ghi.subarray(9, 14)]).toEqual([9, 10, 11, 12, 13])
    expect(record.notes).toContain('GHI: 2 gaps filled by a straight line, 4 h in all.')
  })

  it('four are refused with file and line', () => {
    expect(
      refusal(() =>
        weatherFromText(
          table((i) => i >= 10 && i < 14),
          'my.csv',
        ),
      ),
    ).toBe(
      'my.csv:12 must be a record without gaps over 3 h in ghi (fill it, or cut the record there), ' +
        'got 4 h without a value from 2023-01-01 10:00',
    )
  })

  it('rows that are absent altogether are a gap too', () => {
    const rows = table(() => false).split('\n')
    rows.splice(30, 5)
    expect(refusal(() => weatherFromText(rows.join('\n'), 'my.csv'))).toContain(
      'my.csv:31 must be a record without gaps over 3 h in ghi',
    )
  })
})

describe('tables of other tongues', () => {
  it('semicolons, decimal commas and day before month', () => {
    const rows = Array.from({ length: 24 }, (_, h) => {
      return `01.06.2023 ${String(h).padStart(2, '0')}:00;${h},5;${h},25;${h + 3},75;2,0\n`
    }).join('')
    const rest = 'Lufttemperatur [°C];Windgeschwindigkeit [m/s]'
    const text = `# utc_offset_hours: 1\nZeit;Globalstrahlung [W/m²];Diffusstrahlung [W/m²];${rest}\n${rows}`
    const record = weatherFromText(text, 'w')
    expect(record.startMs).toBe(Date.UTC(2023, 5, 1))
    expect([record.ghi[4], record.dhi?.[4], record.airC?.[4], record.windMs?.[4]]).toEqual([
      4.5, 4.25, 7.75, 2,
    ])
  })
})

describe('the typical year of Greensboro as it is published', () => {
  const record = readWeather(`${SAMPLES}greensboro-tmy3.csv`)

  it('is recognised, its ten source years laid on one', () => {
    expect(record.name).toBe('TMY3 723170 (GREENSBORO PIEDMONT TRIAD INT)')
    expect(record.typicalYear).toBe(true)
    expect(record.notes).toContain('Typical year of mixed source years, laid on 2001.')
    expect([record.ghi.length, record.stepMinutes, record.utcOffsetMinutes]).toEqual([
      8760, 60, -300,
    ])
  })

  // Sums of the file's own columns, worked out with other tools. [kWh/m² a day]
  const GHI = [2.41, 3.06, 4.25, 5.41, 5.64, 6.25, 6.08, 5.61, 4.43, 3.59, 2.43, 2.24]
  // Sum of GHI over sum of the file's extraterrestrial column.
  const CLEARNESS = [
    0.487, 0.481, 0.515, 0.541, 0.507, 0.54, 0.539, 0.544, 0.503, 0.518, 0.458, 0.496,
  ]

  it('has the irradiation of its months, 1566.2 kWh/m² in the year', () => {
    const sums = new Float64Array(12)
    record.ghi.forEach((ghi, i) => {
      sums[new Date(record.startMs + i * HOUR_MS).getUTCMonth()]! += ghi / 1000
    })
    expect(sums.reduce((a, b) => a + b)).toBeCloseTo(1566.2, 1)
    GHI.forEach((daily, m) => {
      const days = new Date(Date.UTC(2001, m + 1, 0)).getUTCDate()
      expect(Math.abs(sums[m]! / days - daily), `month ${m + 1}`).toBeLessThan(0.0051)
    })
  })

  // The file's own light above the air has 1367 W/m², ours 1361: 0.4 %; refraction and the calendar of
  // 2025 for days of 1980 to 2003 are some more.
  it('has the clearness of its months to 0.006', () => {
    const site = { ...record.site, timezone: 'America/New_York' }
    const house = checkHouse(plainHouse({ site, sky: { file: 'w' } }))
    const { sun } = prepare(house, { weather: new Map([['w', record]]) })
    recordClearness(sun, record).forEach((clearness, m) => {
      expect(Math.abs(clearness - CLEARNESS[m]!), `month ${m + 1}`).toBeLessThan(0.006)
    })
  })
})
