// One written date, clock time or both, taken apart.

/** Which of three numbers is the year, month and day. */
export type DateOrder = 'ymd' | 'dmy' | 'mdy'

/** A stamp in its parts; `offsetMinutes` is NaN where it names no offset. */
export interface StampParts {
  readonly date: string
  /** Time of day. [ms], 0..86400000 (24:00 is the end of the day) */
  readonly clockMs: number
  /** Whether a time of day was written. */
  readonly hasClock: boolean
  /** Local time minus UTC. [min] */
  readonly offsetMinutes: number
}

const DATE = String.raw`\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.](?:\d{4}|\d{2})|\d{1,2}[- ][A-Za-z]{3,9}[- ]\d{4}|(?:19|20)\d{6}`
const CLOCK = String.raw`\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?(?:\s*[AaPp]\.?[Mm]\.?)?`
const STAMP = new RegExp(
  String.raw`^(${DATE})(?:(?:T|\s*,\s*|\s+|:)(${CLOCK}|\d{4}))?\s*(Z|UTC|GMT|[+-]\d{2}(?::?\d{2})?)?$`,
)
const CLOCK_ONLY = new RegExp(`^${CLOCK}$`)
const CLOCK_PARTS = /^(\d{1,2}):?(\d{2})(?::(\d{2}(?:[.,]\d+)?))?\s*([AaPp])?/
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/** Takes a stamp apart: `1/2/2007 00:05`, `2007-02-01T00:05:00+01:00`; null where it is none. */
export function splitStamp(text: string): StampParts | null {
  const match = STAMP.exec(text.trim())
  if (match === null) return null
  const clock = match[2]
  const clockMs = clock === undefined ? 0 : clockOf(clock)
  if (Number.isNaN(clockMs)) return null
  const offsetMinutes = offsetOf(match[3])
  return { date: match[1] ?? '', clockMs, hasClock: clock !== undefined, offsetMinutes }
}

/** Whether a cell is a time of day by itself: `00:05`, `5:00:00 PM`. */
export function isClock(text: string): boolean {
  return CLOCK_ONLY.test(text.trim())
}

/** Time of day [ms], 0..86400000; NaN where it is none. `24:00` is the end of the day. */
export function clockOf(text: string): number {
  const match = CLOCK_PARTS.exec(text.trim())
  if (match === null) return Number.NaN
  let hour = Number(match[1])
  const minute = Number(match[2])
  const second = Number((match[3] ?? '0').replace(',', '.'))
  const half = match[4]?.toLowerCase()
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return Number.NaN
    hour = (hour % 12) + (half === 'p' ? 12 : 0)
  }
  const ms = ((hour * 60 + minute) * 60 + second) * 1000
  return minute < 60 && second < 60 && ms <= 86_400_000 ? ms : Number.NaN
}

/** The three numbers of a date as written, or null where the order is beyond doubt or it is none. */
export function doubtfulDate(date: string): readonly [number, number] | null {
  const match = /^(\d{1,2})[-/.](\d{1,2})[-/.]\d+$/.exec(date)
  return match === null ? null : [Number(match[1]), Number(match[2])]
}

/**
 * Midnight of a date, counted as if it were UTC [ms]; NaN where there is no such day.
 *
 * @param order  Used only where the year does not come first and the month has no name
 */
export function dateOf(date: string, order: DateOrder): number {
  if (/^\d{8}$/.test(date)) {
    return day(Number(date.slice(0, 4)), Number(date.slice(4, 6)), Number(date.slice(6)))
  }
  const [a = '', b = '', c = ''] = date.split(/[-/. ]/)
  if (a.length === 4) return day(Number(a), Number(b), Number(c))
  const year = c.length === 2 ? 2000 + Number(c) : Number(c)
  const named = MONTHS.indexOf(b.slice(0, 3).toLowerCase())
  if (named >= 0) return day(year, named + 1, Number(a))
  return order === 'mdy' ? day(year, Number(a), Number(b)) : day(year, Number(b), Number(a))
}

function day(year: number, month: number, dayOfMonth: number): number {
  const ms = Date.UTC(year, month - 1, dayOfMonth)
  const back = new Date(ms)
  const same = back.getUTCMonth() === month - 1 && back.getUTCDate() === dayOfMonth
  return same ? ms : Number.NaN
}

function offsetOf(text: string | undefined): number {
  if (text === undefined) return Number.NaN
  if (/^[A-Z]/.test(text)) return 0
  const digits = text.slice(1).replace(':', '').padEnd(4, '0')
  const size = Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2))
  return text.startsWith('-') ? -size : size
}
