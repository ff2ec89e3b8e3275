// Wall clock to UTC on the two days of the year that are no 24 hours long.

import { meterFromText } from '@tideover/files'
import { expect, it } from 'vitest'

const HALF_HOURS = ['00:00', '00:30', '01:00', '01:30', '02:00', '02:30']
const read = (day: string, clocks: readonly string[], header = 'time') => {
  const rows = clocks.map((clock, i) => `${day} ${clock},${i}`)
  return meterFromText([`${header},kw`, ...rows].join('\n'), 'm.csv', 'Europe/London')
}
const inOrder = (n: number) => Array.from({ length: n }, (_, i) => i)

it('spring: the hour that is left out is no gap', () => {
  const record = read('2024-03-31', ['00:00', '00:30', '02:00', '02:30'])
  expect([...record.kw]).toEqual(inOrder(4))
  expect(record.startMs).toBe(Date.UTC(2024, 2, 31))
})

it('spring: stamps within the hour that is left out are dropped, counted and said', () => {
  const record = read('2024-03-31', HALF_HOURS)
  expect([...record.kw]).toEqual([0, 1, 4, 5])
  expect(record.notes.join('\n')).toMatch(
    /2 stamps lie in the hour that spring leaves out \(line 4, 2024-03-31 01:00\): left out/,
  )
})

it('spring: the end of the last winter half hour may be written as the hour that is left out', () => {
  const record = read('2024-03-31', ['00:30', '01:00', '02:30', '03:00'], 'time_end')
  expect([...record.kw]).toEqual(inOrder(4))
})

it('autumn: the hour that comes twice is taken in order', () => {
  const record = read('2024-10-27', ['00:00', '00:30', '01:00', '01:30', '01:00', '01:30', '02:00'])
  expect([...record.kw]).toEqual(inOrder(7))
  expect(record.startMs).toBe(Date.UTC(2024, 9, 26, 23))
  expect(record.notes).toContain('The hour that autumn repeats is there twice, taken in order.')
})

it('autumn: ends of intervals work the same', () => {
  const clocks = ['00:30', '01:00', '01:30', '01:00', '01:30', '02:00', '02:30']
  expect([...read('2024-10-27', clocks, 'time_end').kw]).toEqual(inOrder(7))
})

it('autumn: newest first works the same', () => {
  const clocks = ['02:00', '01:30', '01:00', '01:30', '01:00', '00:30', '00:00']
  expect([...read('2024-10-27', clocks).kw]).toEqual(inOrder(7).reverse())
})

it('autumn: an hour that is there but once leaves a gap that is filled and told', () => {
  const record = read('2024-10-27', HALF_HOURS)
  expect(record.kw).toHaveLength(8)
  expect(record.notes.join('\n')).toContain('1 gap filled by a straight line: 1 h')
})

it('a whole year of half hours in local time has no gap and no repeat', () => {
  const clock = new Intl.DateTimeFormat('sv-SE', {
    timeZone: 'Europe/London',
    dateStyle: 'short',
    timeStyle: 'short',
  })
  const start = Date.UTC(2024, 0, 1)
  const rows = Array.from({ length: 17568 }, (_, i) => `${clock.format(start + i * 1_800_000)},1`)
  const record = meterFromText(['time,kw', ...rows].join('\n'), 'm.csv', 'Europe/London')
  expect(record.kw).toHaveLength(17568)
  expect(record.startMs).toBe(start)
  expect(record.notes.join('\n')).not.toMatch(/gap|repeated row/)
})

it('a meter that keeps winter time all year is read by its offset', () => {
  const rows = HALF_HOURS.map((half, i) => `2024-03-31 ${half},${i}`)
  const record = meterFromText(['time,kw', ...rows].join('\n'), 'm.csv', 'UTC+1')
  expect([...record.kw]).toEqual(inOrder(6))
  expect(record.startMs).toBe(Date.UTC(2024, 2, 30, 23))
})
