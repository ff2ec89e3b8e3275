// Minutes from now as a clock and a day in words.

import { MINUTE_MS, type NowAnswer, type Prepared } from '@tideover/core'
import { DateTime } from 'luxon'

/** Minutes from now as `21:00`, `04:08 tomorrow`. */
export type Clock = (minute: number) => string

/** The day is in words, for the house's year has other weekdays than this one. */
export function clockOf({ calendar }: Prepared, { minute: now }: NowAnswer): Clock {
  const at = (minute: number): DateTime =>
    DateTime.fromMillis(calendar.startMs + minute * MINUTE_MS, { zone: calendar.zone })
  const today = at(now).startOf('day')
  return (minute) => {
    const time = at(now + minute)
    const days = Math.round(time.startOf('day').diff(today, 'days').days)
    const day = days === 0 ? '' : days === 1 ? ' tomorrow' : ` in ${days} days`
    return `${time.toFormat('HH:mm')}${day}`
  }
}
