// Meter files in separated text: what is understood, what is filled, what is refused.

import { meterFromText } from '@tideover/files'
import { expect, it } from 'vitest'
import { refusal } from './problems.js'

const read = (text: string, zone = 'Europe/London') => meterFromText(text, 'm.csv', zone)
const refused = (text: string, zone?: string) => refusal(() => read(text, zone))

/** Rows of a day in January, one every `step` minutes. */
function day(step: number, value: (i: number) => string | number, from = '2024-01-09'): string[] {
  return Array.from({ length: 1440 / step }, (_, i) => {
    const clock = [Math.floor((i * step) / 60), (i * step) % 60]
    return `${from} ${clock.map((part) => String(part).padStart(2, '0')).join(':')},${value(i)}`
  })
}

it('reads kW as it stands, with period, step, total and peak in the notes', () => {
  const record = read(['time,load_kw', ...day(30, (i) => (i < 24 ? 0.5 : 1))].join('\n'))
  expect(record.startMs).toBe(Date.UTC(2024, 0, 9))
  expect(record.stepMinutes).toBe(30)
  expect(record.kw).toHaveLength(48)
  expect(record.kw[47]).toBe(1)
  expect(record.notes[0]).toBe(
    '2024-01-09 00:00 to 2024-01-10 00:00 Europe/London: 48 intervals of 30 min.',
  )
  expect(record.notes[1]).toBe('18.0 kWh in all, mean 0.750 kW, peak 1.000 kW.')
})

it.each([
  ['load_kw', 0.5],
  ['Load [W]', 0.0005],
  ['usageKwh', 1],
  ['KWH/hh (per half hour) ', 1],
  ['Consumption (Wh)', 0.001],
  ['power in kilowatts', 0.5],
  ['energy, watt hours', 0.001],
])('reads the unit in the header "%s"', (header, kw) => {
  const record = read(`time,"${header}"\n2024-01-01 00:00,0.5\n2024-01-01 00:30,0.5\n`)
  expect([...record.kw]).toEqual([kw, kw])
})

it('reads day/month/year, a row number without a name, quotes and the empty cell of a household logger', () => {
  const rows = Array.from({ length: 1440 }, (_, i) => {
    const clock = `${String(Math.floor(i / 60)).padStart(2, '0')}:${String(i % 60).padStart(2, '0')}`
    const value = i === 1378 || i === 1379 ? 'NA,NA' : `${(0.204 + (i % 9) / 10).toFixed(3)},0.1`
    return `"${i + 1}","22/2/2007","${clock}:00",${value},235.1`
  })
  const header = '"","date","time","global_active_power","global_reactive_power","voltage"'
  const record = read([header, ...rows].join('\n'), 'Europe/Paris')
  expect(record.startMs).toBe(Date.UTC(2007, 1, 21, 23))
  expect(record.kw).toHaveLength(1440)
  expect(record.kw[0]).toBe(0.204)
  expect(record.kw[1378]).toBeCloseTo(0.204 + (0.504 - 0.204) / 3, 12)
  expect(record.notes.join('\n')).toContain('1 gap filled by a straight line: 2 min')
  expect(record.notes.join('\n')).toContain('names no unit; its peak of 1.004')
})

it('reads semicolons, decimal commas and question marks', () => {
  const text =
    'Date;Time;Power (kW)\n16/12/2006;17:24:00;4,216\n16/12/2006;17:25:00;?\n16/12/2006;17:26:00;5,0\n'
  expect([...read(text).kw]).toEqual([4.216, (4.216 + 5) / 2, 5])
})

it('reads month/day/year where a day above 12 shows it', () => {
  const text = 'time,kw\n2/13/2024 00:00,1\n2/13/2024 01:00,1\n'
  expect(read(text).startMs).toBe(Date.UTC(2024, 1, 13))
})

it('tells day from month by the order in which the dates follow one another', () => {
  const rows = ['1/2/2024', '2/2/2024', '3/2/2024'].flatMap((date) =>
    Array.from({ length: 24 }, (_, hour) => `${date} ${hour}:00,1`),
  )
  expect(read(['time,kw', ...rows].join('\n')).startMs).toBe(Date.UTC(2024, 1, 1))
})

it('refuses a single day whose month can not be told', () => {
  expect(refused('time,kw\n1/2/2024 00:00,1\n1/2/2024 01:00,1\n')).toBe(
    'm.csv:2 must be dates whose day and month can be told apart (write them as 2007-02-01), got 1/2/2024',
  )
})

it('refuses a file that writes dates both ways', () => {
  expect(refused('time,kw\n13/2/2024 00:00,1\n2/14/2024 01:00,1\n')).toContain(
    'one order of day and month, got 2/14/2024 and 13/2/2024',
  )
})

it('reads stamps with their own offset, whatever the zone', () => {
  const text = 'time,kw\n2024-07-01T00:00:00+02:00,1\n2024-07-01T00:15:00+02:00,2\n'
  expect(read(text, 'America/Denver').startMs).toBe(Date.UTC(2024, 5, 30, 22))
})

it('refuses a file in which only some stamps have an offset', () => {
  expect(refused('time,kw\n2024-07-01T00:00Z,1\n2024-07-01T00:15Z,1\n2024-07-01T00:30,1\n')).toBe(
    'm.csv:4 must be a stamp with an offset from UTC, as the other rows have, got 2024-07-01T00:30',
  )
})

it('takes a column named as UTC as UTC', () => {
  const text = 'time_utc,kw\n2024-07-01 00:00,1\n2024-07-01 00:15,2\n'
  expect(read(text).startMs).toBe(Date.UTC(2024, 6, 1))
})

it('takes an end column as the end of its interval, and a start column before it', () => {
  const ends = 'time_end,kw\n2024-01-01 00:30,1\n2024-01-01 01:00,2\n'
  expect(read(ends).startMs).toBe(Date.UTC(2024, 0, 1))
  const both =
    'end,start,kw\n2024-01-01 00:30,2024-01-01 00:00,1\n2024-01-01 01:00,2024-01-01 00:30,1\n'
  expect(read(both).startMs).toBe(Date.UTC(2024, 0, 1))
})

it('turns a file round that runs from the newest to the oldest', () => {
  const text = 'time,kw\n2024-01-01 01:00,3\n2024-01-01 00:30,2\n2024-01-01 00:00,1\n'
  expect([...read(text).kw]).toEqual([1, 2, 3])
})

it('finds the header below titles and leaves off a total below the data', () => {
  const text =
    'Name,A. Customer\nAddress,"1, High Street"\n\nTYPE,DATE,START TIME,END TIME,USAGE,UNITS\n' +
    'Electric usage,2024-01-01,00:00,00:14,0.1,kWh\nElectric usage,2024-01-01,00:15,00:29,0.2,kWh\nTotal 0.3\n'
  const record = read(text)
  expect([...record.kw]).toEqual([0.4, 0.8])
  expect(record.notes).toContain('1 line after the data left out.')
})

it('fills a gap of 2 h, leaves a longer one and tells it, refuses a record that is mostly gaps', () => {
  const rows = day(30, (i) => i)
  const without = (n: number) => ['time,kw', ...rows.slice(0, 10), ...rows.slice(10 + n)].join('\n')
  expect([...read(without(4)).kw.subarray(9, 15)]).toEqual([9, 10, 11, 12, 13, 14])
  const left = read(without(5))
  expect([...left.kw.subarray(9, 16)].map((kw) => Math.round(kw))).toEqual([
    ...[9, Number.NaN, Number.NaN, Number.NaN, Number.NaN, Number.NaN, 15],
  ])
  expect(left.notes).toContain(
    '1 gap over 2 h, 2 h 30 min in all, the longest 2 h 30 min from 2024-01-09 05:00: the days ' +
      'they lie in are left out, and their neighbours stand in.',
  )
  expect(refused(without(30))).toBe(
    'm.csv:12 must be a record that is not mostly gaps over 2 h (is a stretch of it missing?), ' +
      'got 15 h without a reading from 2024-01-09 05:00',
  )
})

it('names the first line of a long gap whose rows are there but empty', () => {
  const text = ['time,kw', ...day(30, (i) => (i >= 10 && i < 40 ? '?' : 1))].join('\n')
  expect(refused(text)).toContain('m.csv:12 must be a record that is not mostly gaps')
})

it('says how many rows come twice, and keeps the first of two that differ', () => {
  const text =
    'time,kw\n2024-01-01 00:00,1\n2024-01-01 00:00,1\n2024-01-01 00:30,2\n2024-01-01 00:30,9\n2024-01-01 01:00,3\n'
  const record = read(text)
  expect([...record.kw]).toEqual([1, 2, 3])
  expect(record.notes).toContain('1 repeated row left out.')
  expect(record.notes).toContain(
    '1 interval with a second, different reading: the first kept (first at line 5).',
  )
})

it('refuses a file that holds two meters', () => {
  const rows = day(30, (i) => i).flatMap((row) => [row, `${row}5`])
  expect(refused(['time,kw', ...rows].join('\n'))).toContain('does it hold two meters?')
})

it('subtracts neighbours of a register that only ever rises', () => {
  const text =
    'time,total_import_kwh\n2024-01-01 00:00,5120.5\n2024-01-01 00:30,5120.75\n2024-01-01 01:00,5121.75\n'
  const record = read(text)
  expect([...record.kw]).toEqual([0.5, 2])
  expect(record.startMs).toBe(Date.UTC(2024, 0, 1))
  expect(record.notes.join('\n')).toContain('a register, neighbours subtracted')
})

it('keeps a few rising energies of intervals as they are', () => {
  const text = 'time,import_kwh\n2024-01-01 00:00,0.1\n2024-01-01 00:30,0.2\n2024-01-01 01:00,0.4\n'
  expect([...read(text).kw]).toEqual([0.2, 0.4, 0.8])
})

it('spreads what a register counted over a short gap', () => {
  const text =
    'time,meter_reading_kwh\n2024-01-01 00:00,10\n2024-01-01 00:30,10.5\n2024-01-01 01:30,12.5\n2024-01-01 02:00,12.5\n'
  expect([...read(text).kw]).toEqual([1, 2, 2, 0])
})

it('refuses a register that falls', () => {
  const text =
    'time,register_kwh\n2024-01-01 00:00,10\n2024-01-01 00:30,10.5\n2024-01-01 01:00,0.5\n'
  expect(refused(text)).toBe(
    'm.csv:4 must be a register that never falls (cut the file where the meter was changed), got 0.5',
  )
})

it('asks for the unit where the header has none and the size leaves it open', () => {
  const power = 'time,power\n2024-01-01 00:00,60\n2024-01-01 00:30,80\n'
  expect(refused(power)).toBe(
    'm.csv:1 must be a header with the unit of "power" (kw, w, kwh or wh an interval), got time, power',
  )
  expect(refused('time,usage\n2024-01-01 00:00,1.234\n2024-01-01 00:30,0.456\n')).toContain(
    'the unit of "usage"',
  )
})

it('refuses a load that no house has: watts under a header of kW', () => {
  expect(refused('time,kw\n2024-01-01 00:00,230\n2024-01-01 00:30,9410\n')).toBe(
    'm.csv:3 must be a load of one house, at most 100 kW (is the unit in the header right?), got 9410 kW',
  )
})

it('refuses to choose between two loads, unless the caller names one', () => {
  const text = 'time,upstairs_kw,downstairs_kw\n2024-01-01 00:00,1,2\n2024-01-01 00:30,1,2\n'
  expect(refused(text)).toContain(
    'one load column, or the column named in the house file (column), got upstairs_kw, downstairs_kw',
  )
  const record = meterFromText(text, 'm.csv', 'UTC', { column: 'downstairs_kw' })
  expect([...record.kw]).toEqual([2, 2])
})

it('takes the words of home automation for no reading', () => {
  const text = 'time,kw\n2024-01-01 00:00,1\n2024-01-01 00:30,unavailable\n2024-01-01 01:00,3\n'
  expect([...read(text).kw]).toEqual([1, 2, 3])
})

it('refuses a table with a day a row, and says what is needed', () => {
  const clocks = Array.from({ length: 48 }, (_, i) => `${Math.floor(i / 2)}:${i % 2 ? '30' : '00'}`)
  const text = `Date,${clocks.join(',')}\n01/03/2024,${clocks.map(() => '0.2').join(',')}\n`
  expect(refused(text)).toBe(
    'm.csv:1 must be a file with one reading a row: a column with date and time, one with kw or ' +
      'kwh, got a day a row, 48 clock times as headers',
  )
})

it('refuses a load below zero, and takes a trifle below zero as nothing', () => {
  expect(refused('time,load_kw\n2024-01-01 00:00,1\n2024-01-01 00:30,-1.5\n')).toContain(
    'm.csv:3 must be a load >= 0 (below zero is solar export',
  )
  const record = read('time,w\n2024-01-01 00:00,500\n2024-01-01 00:30,-2.7\n')
  expect([...record.kw]).toEqual([0.5, 0])
  expect(record.notes).toContain('1 slightly negative reading taken as 0.')
})

it('tells every fault of a file, and counts those beyond twenty', () => {
  const text = ['time,kw', ...day(30, (i) => (i < 25 ? 'oops' : 1))].join('\n')
  const lines = refused(text).split('\n')
  expect(lines).toHaveLength(21)
  expect(lines[0]).toBe('m.csv:2 must be a number in "kw", or nothing, got "oops"')
  expect(lines[20]).toBe('m.csv must be free of faults like these, got 5 more')
})

it('refuses thousands marks, for 1,234 may be one thing or another', () => {
  expect(refused('time,w\n2024-01-01 00:00,"1,234"\n2024-01-01 00:30,900\n')).toContain(
    'got "1,234"',
  )
})

it('refuses a time that is none, with its line', () => {
  const text = 'time,kw\n2024-02-28 00:00,1\n2024-02-30 00:30,1\n2024-02-28 25:00,1\n'
  expect(refused(text)).toContain(
    'm.csv:4 must be a row with a date and time, got "2024-02-28 25:00"',
  )
  expect(refused(text)).toContain('m.csv:3 must be a day that exists, got "2024-02-30 00:30"')
})

it('takes 24:00 as the end of the day', () => {
  const text = 'date,time_end,kw\n2024-01-01,23:30,1\n2024-01-01,24:00,2\n2024-01-02,00:30,3\n'
  expect(read(text).startMs).toBe(Date.UTC(2024, 0, 1, 23))
  expect([...read(text).kw]).toEqual([1, 2, 3])
})

it.each([
  ['daily rows', '2024-01-01,1\n2024-01-02,1\n', 'a reading every 1440 min'],
  ['seconds', '2024-01-01 00:00:00,1\n2024-01-01 00:00:10,1\n', 'a reading every 10 s'],
  ['25 minutes', '2024-01-01 00:00,1\n2024-01-01 00:25,1\n', 'a reading every 25 min'],
  ['one row', '2024-01-01 00:00,1\n', 'fewer than two different times'],
])('refuses a step of %s', (_, rows, got) => {
  expect(refused(`time,kw\n${rows}`)).toContain(
    `a step of 1 to 60 min that divides the hour, got ${got}`,
  )
})

it('puts stamps a few seconds off the minute on the nearest, and says so', () => {
  const record = read(
    'time,kw\n2024-01-01 00:00:02,1\n2024-01-01 00:01:02,2\n2024-01-01 00:02:03,3\n',
  )
  expect(record.startMs).toBe(Date.UTC(2024, 0, 1))
  expect(record.notes).toContain('Stamps lie up to 3 s off the step; each is put on the nearest.')
})

it('keeps hours on the half hour where the zone is', () => {
  const record = read('time,kw\n2024-01-01 00:00,1\n2024-01-01 01:00,2\n', 'Asia/Kolkata')
  expect(record.startMs).toBe(Date.UTC(2023, 11, 31, 18, 30))
})

it.each([
  ['', 'm.csv:1 must be a file with readings, got an empty file'],
  ['time;kw\n', 'm.csv:1 must be a header row above rows with a date and time'],
  ['2024-01-01 00:00,1\n2024-01-01 00:30,1\n', 'm.csv:1 must be a header row above rows'],
  ['time,kw\n2024-01-01 00:00,1\n"2024-01-01 00:30,1\n', 'a row whose quotes are closed'],
])('refuses %j', (text, message) => {
  expect(refused(text)).toContain(message)
})

it('refuses a zone that is none, or that depends on the machine', () => {
  expect(refused('time,kw\n', 'Europe/Atlantis')).toBe(
    'zone must be an IANA time zone, or UTC+1 and the like, got "Europe/Atlantis"',
  )
  expect(refused('time,kw\n', 'local')).toContain('zone must be an IANA time zone')
})
