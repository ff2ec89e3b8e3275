// Public holidays, as a house lists them.

export const HOLIDAY_NEED = 'a day such as 12-25 (every year) or 2025-04-18'

const DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** Whether a text names a day that some year has. */
export function isHolidayText(value: string): boolean {
  const match = /^(?:(\d{4})-)?(\d{2})-(\d{2})$/.exec(value)
  if (match === null) return false
  const [year, month, day] = [match[1], Number(match[2]), Number(match[3])]
  if (!(day >= 1 && day <= (DAYS[month - 1] ?? 0))) return false
  return year === undefined || new Date(Date.UTC(Number(year), month - 1, day)).getUTCDate() === day
}

/** What of a local day tells its weekday. */
interface Day {
  readonly month: number
  readonly day: number
  /** Monday 1 .. Sunday 7 */
  readonly weekday: number
}

/**
 * Weekday by which a day runs: a holiday is a Sunday, as in BDEW's household profiles.
 *
 * @param holidays  `MM-DD` for every year, or `YYYY-MM-DD`
 * @returns         Monday 1 .. Sunday 7
 */
export function weekdayOf(day: Day, year: number, holidays: readonly string[]): number {
  if (holidays.length === 0) return day.weekday
  const date = [day.month, day.day].map((part) => String(part).padStart(2, '0')).join('-')
  return holidays.includes(date) || holidays.includes(`${year}-${date}`) ? 7 : day.weekday
}
