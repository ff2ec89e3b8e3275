// The house's year. Clock changes by their published dates: European Union directive 2000/84/EC
// (last Sundays of March and October), New Zealand Time Order 2007 (last Sunday of September,
// first of April), Lord Howe Island (half an hour, first Sundays of October and April).

import {
  calendarOf,
  clockMinute,
  inSpan,
  isoUtc,
  isZone,
  type LocalDay,
  listOfMonths,
  localTime,
  monthRange,
} from '@tideover/core'
import { DateTime } from 'luxon'
import { describe, expect, it } from 'vitest'

const london = calendarOf(2025, 'Europe/London')
const auckland = calendarOf(2025, 'Pacific/Auckland')
const lordHowe = calendarOf(2025, 'Australia/Lord_Howe')
const havana = calendarOf(2025, 'America/Havana')
const kolkata = calendarOf(2025, 'Asia/Kolkata')

/** Days that are not 24 hours long: `30.3. 1380`. */
function oddDays(days: readonly LocalDay[]): string[] {
  return days
    .filter((day) => day.end - day.start !== 1440)
    .map((day) => `${day.day}.${day.month}. ${day.end - day.start}`)
}

describe('days', () => {
  it.each([
    ['Europe/London', london, ['30.3. 1380', '26.10. 1500']],
    ['Pacific/Auckland', auckland, ['6.4. 1500', '28.9. 1380']],
    ['Australia/Lord_Howe', lordHowe, ['6.4. 1470', '5.10. 1410']],
    // Midnight itself is left out in March and comes twice in November.
    ['America/Havana', havana, ['9.3. 1380', '2.11. 1500']],
    ['Asia/Kolkata', kolkata, []],
  ] as const)('of %s change their length where the clock does', (_, calendar, odd) => {
    expect(oddDays(calendar.days)).toEqual(odd)
    expect(calendar.days).toHaveLength(365)
    expect(calendar.n).toBe(525_600)
    expect(calendar.days[0]!.start).toBe(0)
    expect(calendar.days.at(-1)!.end).toBe(525_600)
    for (const [i, day] of calendar.days.slice(1).entries()) {
      expect(day.start).toBe(calendar.days[i]!.end)
    }
  })

  it('are 366 in a leap year: 527 040 minutes', () => {
    const leap = calendarOf(2024, 'Europe/London')
    expect(leap.n).toBe(527_040)
    expect(leap.days).toHaveLength(366)
    expect(leap.days[59]).toMatchObject({ month: 2, day: 29, dayOfYear: 60, weekday: 4 })
  })

  it('have their weekday: 1 January 2025 was a Wednesday, everywhere', () => {
    for (const calendar of [london, auckland, lordHowe, kolkata]) {
      expect(calendar.days[0]).toMatchObject({ month: 1, day: 1, weekday: 3, dayOfYear: 1 })
    }
  })

  it('that begin at 01:00, as Cairo has them in April, lose their first hour', () => {
    const cairo = calendarOf(2025, 'Africa/Cairo')
    const day = cairo.days.find(({ month, day }) => month === 4 && day === 25)!
    expect(day.end - day.start).toBe(1380)
    expect(cairo.wallMinute[day.start]).toBe(60)
    expect(cairo.n).toBe(525_600)
  })
})

describe('the clock on the wall', () => {
  const minutesOfDay = (calendar: typeof london, month: number, day: number): Int16Array => {
    const found = calendar.days.find((d) => d.month === month && d.day === day)!
    return calendar.wallMinute.subarray(found.start, found.end)
  }

  it('leaves out an hour in spring', () => {
    const wall = minutesOfDay(london, 3, 30)
    expect([...wall.subarray(58, 62)]).toEqual([58, 59, 120, 121])
    expect(wall.at(-1)).toBe(1439)
  })

  it('shows an hour twice in autumn', () => {
    const wall = minutesOfDay(london, 10, 26)
    expect([...wall.subarray(118, 122)]).toEqual([118, 119, 60, 61])
    expect(wall.at(-1)).toBe(1439)
  })

  it('leaves out and repeats half an hour on Lord Howe Island', () => {
    const spring = minutesOfDay(lordHowe, 10, 5)
    expect([...spring.subarray(118, 122)]).toEqual([118, 119, 150, 151])
    const autumn = minutesOfDay(lordHowe, 4, 6)
    expect([...autumn.subarray(118, 122)]).toEqual([118, 119, 90, 91])
  })

  it('agrees with the tables of the platform, minute by minute, through both changes', () => {
    for (const calendar of [london, auckland, lordHowe]) {
      const format = new Intl.DateTimeFormat('en-GB', {
        timeZone: calendar.zone,
        hour: '2-digit',
        minute: '2-digit',
        hourCycle: 'h23',
      })
      let compared = 0
      for (const day of calendar.days.filter((d) => d.end - d.start !== 1440)) {
        for (let i = day.start - 120; i < day.end + 120; i += 5) {
          const [hour, minute] = format
            .format(calendar.startMs + i * 60_000)
            .split(':')
            .map(Number)
          expect(calendar.wallMinute[i]).toBe(hour! * 60 + minute!)
          compared++
        }
      }
      expect(compared).toBeGreaterThan(600)
    }
  })
})

describe('months', () => {
  it('are local months: July in Auckland begins at noon of 30 June, UTC', () => {
    const [from, to] = monthRange(auckland, 7)
    expect(isoUtc(auckland, from)).toBe('2025-06-30T12:00Z')
    expect(to - from).toBe(31 * 1440)
  })

  it('tile the year, a month with a clock change being an hour off', () => {
    const lengths = Array.from({ length: 12 }, (_, m) => {
      const [from, to] = monthRange(london, m + 1)
      return (to - from) / 60
    })
    expect(lengths).toEqual([744, 672, 743, 720, 744, 720, 744, 744, 720, 745, 720, 744])
    expect(monthRange(calendarOf(2024, 'UTC'), 2)).toEqual([31 * 1440, 60 * 1440])
  })
})

describe('times in words', () => {
  it('run on past the end of the year', () => {
    expect(isoUtc(london, 525_600 + 61)).toBe('2026-01-01T01:01Z')
    expect(localTime(london, 13 * 1440 + 980)).toBe('Tue 14 Jan 16:20')
    expect(localTime(auckland, 0)).toBe('Wed 1 Jan 00:00')
  })

  // Luxon, an independent library, on every hour and on clock changes, and a day past the year.
  it.each([london, auckland, lordHowe])(
    'is written as luxon writes it through the year in $zone',
    (calendar) => {
      const { zone, startMs, n } = calendar
      for (let minute = 0; minute < n + 1440; minute += 75) {
        const there = DateTime.fromMillis(startMs + minute * 60_000, { zone, locale: 'en-GB' })
        expect(localTime(calendar, minute)).toBe(there.toFormat('ccc d LLL HH:mm'))
      }
    },
  )

  it.each([
    ['00:00', 0],
    ['7:05', 425],
    ['24:00', 1440],
    ['24:01', null],
    ['12:60', null],
    ['noon', null],
    ['', null],
  ])('reads the clock time %s', (text, minute) => {
    expect(clockMinute(text)).toBe(minute)
  })

  it('a span holds its first minute and not its last, over midnight too', () => {
    expect([359, 360, 479, 480].map((m) => inSpan(m, 360, 480))).toEqual([false, true, true, false])
    expect([1319, 1320, 0, 359, 360].map((m) => inSpan(m, 1320, 360))).toEqual([
      false,
      true,
      true,
      true,
      false,
    ])
    expect(inSpan(1439, 1320, 1440)).toBe(true)
  })

  it('knows which zones there are', () => {
    expect(['Europe/London', 'Australia/Lord_Howe', 'UTC'].every(isZone)).toBe(true)
    expect(['Europe/Stornoway', 'Mars', ''].some(isZone)).toBe(false)
  })
})

it.each([
  [[1], 'January'],
  [[11, 12, 2], 'November, December and February'],
  [[1, 2, 11, 12], 'November to February'],
  [[1, 2, 5, 7, 11, 12], 'May, July and November to February'],
  [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], 'the whole year'],
])('lists the months %j', (months, text) => {
  expect(listOfMonths(months)).toBe(text)
})
