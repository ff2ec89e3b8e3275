// Typical years: EPW and TMY3, their hour-ending stamps, mixed years and missing codes.
//
// The header line of the EPW fixture and its column order are those of a published Amsterdam file;
// the values are made up.

import { weatherFromText } from '@tideover/files'
import { expect, it } from 'vitest'
import { refusal } from './problems.js'

const HOURS = 8760
const start = Date.UTC(2001, 0, 1)
const at = (i: number) => new Date(start + i * 3_600_000)
/** Months come from different years, February from a leap year. */
const YEARS = [1986, 1988, 1979, 1990, 1992, 1978, 1993, 1989, 1995, 1982, 1976, 1980]

interface Hour {
  year?: number
  ghi?: number
  air?: number
  wind?: number
}
type Change = (i: number) => Hour | null

function epw(
  change: Change = () => ({}),
  location = 'LOCATION,AMSTERDAM,-,NLD,IWEC Data,062400,52.30,4.77,1.0,-2.0',
): string {
  const head = [
    location,
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    'COMMENTS 1,made up',
    'COMMENTS 2,',
    'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
  ]
  for (let i = 0; i < HOURS; i++) {
    const hour = change(i)
    if (hour === null) continue
    const date = at(i)
    const row: (string | number)[] = new Array(35).fill(0)
    row[0] = hour.year ?? YEARS[date.getUTCMonth()] ?? 0
    row[1] = date.getUTCMonth() + 1
    row[2] = date.getUTCDate()
    row[3] = date.getUTCHours() + 1
    row[5] = '?9?9*_*9'
    row[6] = hour.air ?? 5.5
    row[13] = hour.ghi ?? i % 24
    row[14] = 2
    row[15] = 3
    row[21] = hour.wind ?? 4
    head.push(row.join(','))
  }
  return `${head.join('\r\n')}\r\n`
}

function tmy3(change: Change = () => ({})): string {
  const head = [
    '723170,"GREENSBORO PIEDMONT TRIAD INT",NC,-5.0,36.100,-79.950,273',
    'Date (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),GHI (W/m^2),GHI source,DNI (W/m^2),DHI (W/m^2),Dry-bulb (C),Wspd (m/s)',
  ]
  for (let i = 0; i < HOURS; i++) {
    const hour = change(i)
    if (hour === null) continue
    const date = at(i)
    const two = (n: number) => String(n).padStart(2, '0')
    const day = `${two(date.getUTCMonth() + 1)}/${two(date.getUTCDate())}/${YEARS[date.getUTCMonth()]}`
    const values = [0, hour.ghi ?? i % 24, 1, 2, 3, hour.air ?? 10, hour.wind ?? 6]
    head.push(`${day},${two(date.getUTCHours() + 1)}:00,${values.join(',')}`)
  }
  return `${head.join('\n')}\n`
}

const refused = (text: string) => refusal(() => weatherFromText(text, 'w'))

it('EPW: hour h covers the hour before it, mixed years lie on 2001, the place is read', () => {
  const record = weatherFromText(epw(), 'w')
  expect(record.name).toBe('EPW 062400 (AMSTERDAM)')
  expect(record.startMs).toBe(start)
  expect(record.stepMinutes).toBe(60)
  expect(record.utcOffsetMinutes).toBe(60)
  expect(record.site).toEqual({ latitudeDeg: 52.3, longitudeDeg: 4.77, elevationM: -2 })
  expect(record.typicalYear).toBe(true)
  expect([...record.ghi.subarray(0, 3)]).toEqual([0, 1, 2])
  expect([record.dni?.[9], record.dhi?.[9], record.airC?.[9], record.windMs?.[9]]).toEqual([
    2, 3, 5.5, 4,
  ])
  expect(record.ghi).toHaveLength(HOURS)
})

it('EPW: missing codes 9999, 99.9 and 999 are filled over up to 3 h, and told', () => {
  const record = weatherFromText(
    epw((i) => (i >= 10 && i < 13 ? { ghi: 9999, air: 99.9, wind: 999 } : {})),
    'w',
  )
  expect([...record.ghi.subarray(9, 14)]).toEqual([9, 10, 11, 12, 13])
  expect(record.airC?.[11]).toBe(5.5)
  expect(record.notes).toContain('GHI: 1 gap filled by a straight line, 3 h in all.')
  expect(record.notes).toContain('Wind: 1 gap filled by a straight line, 3 h in all.')
})

it('EPW: a longer gap is refused with its line, in every column that has it', () => {
  const text = epw((i) => (i >= 10 && i < 14 ? { ghi: 9999, air: 99.9 } : {}))
  expect(refused(text).split('\n')).toEqual([
    'w:19 must be a record without gaps over 3 h in ghi (fill it, or cut the record there), got 4 h without a value from 2001-01-01 10:00',
    'w:19 must be a record without gaps over 3 h in air temperature (fill it, or cut the record there), got 4 h without a value from 2001-01-01 10:00',
  ])
})

it('EPW: a column that is missing throughout is left out, and told', () => {
  const record = weatherFromText(
    epw(() => ({ wind: 999 })),
    'w',
  )
  expect(record.windMs).toBeNull()
  expect(record.notes).toContain('Wind is missing throughout: left out.')
})

it('EPW: one real year stays on its own calendar; its absent 29 February repeats the 28th', () => {
  const location = 'LOCATION,Somewhere,-,NLD,measured,062400,52.30,4.77,1.0,-2.0'
  const record = weatherFromText(
    epw((i) => ({ year: 2016, ghi: i % 1000 }), location),
    'w',
  )
  expect(record.typicalYear).toBe(false)
  expect(record.startMs).toBe(Date.UTC(2016, 0, 1))
  expect(record.ghi).toHaveLength(8784)
  const leapDay = 59 * 24
  expect(record.ghi[leapDay + 5]).toBe(record.ghi[leapDay - 24 + 5])
  expect(record.ghi[leapDay + 24]).toBe(leapDay % 1000)
  expect(record.notes).toContain('1 29 February absent: the day before repeated.')
})

it('EPW: one year that calls itself typical is taken at its word', () => {
  const record = weatherFromText(
    epw(() => ({ year: 2016 })),
    'w',
  )
  expect(record.typicalYear).toBe(true)
})

it('EPW: a short record is allowed, with a note', () => {
  const record = weatherFromText(
    epw((i) => (i < 48 ? {} : null)),
    'w',
  )
  expect(record.ghi).toHaveLength(48)
  expect(record.notes).toContain('Covers 2 days, less than a year.')
})

it('EPW: a short row, an hour of 25 and a header without its place are refused', () => {
  const rows = epw((i) => (i < 48 ? {} : null)).split('\r\n')
  rows[10] = '1986,1,1,3'
  rows[11] = rows[11]?.replace('1986,1,1,4', '1986,1,1,25') ?? ''
  expect(refused(rows.join('\n'))).toBe(
    'w:11 must be a row of 35 columns, got 4\nw:12 must be an hour of 1 to 24, got "1986,1,1,25,0"',
  )
  expect(refused('LOCATION,A,B\n')).toContain('w:1 must be LOCATION with latitude')
})

it('TMY3: 01:00 to 24:00 are ends of hours, dates are month first, ten years lie on 2001', () => {
  const record = weatherFromText(tmy3(), 'w')
  expect(record.name).toBe('TMY3 723170 (GREENSBORO PIEDMONT TRIAD INT)')
  expect(record.startMs).toBe(start)
  expect(record.utcOffsetMinutes).toBe(-300)
  expect(record.typicalYear).toBe(true)
  expect(record.ghi).toHaveLength(HOURS)
  expect([record.ghi[23], record.ghi[24], record.ghi[HOURS - 1]]).toEqual([23, 0, 23])
  expect([record.dni?.[0], record.dhi?.[0], record.airC?.[0], record.windMs?.[0]]).toEqual([
    2, 3, 10, 6,
  ])
})

it('TMY3: the missing code -9900 is filled, and a word among numbers refused', () => {
  const filled = weatherFromText(
    tmy3((i) => (i === 12 ? { ghi: -9900 } : {})),
    'w',
  )
  expect(filled.ghi[12]).toBe(12)
  const text = tmy3((i) => (i < 48 ? {} : null)).replace('01:00,0,0,', '01:00,0,none,')
  expect(refused(text)).toBe('w:3 must be a number in "GHI (W/m^2)", got "none"')
})

it('an irradiance that the sun can not give is refused', () => {
  expect(refused(epw((i) => (i === 12 ? { ghi: 5000 } : {})))).toBe(
    'w:21 must be irradiance of at most 2000 [W/m²], got 5000',
  )
})
