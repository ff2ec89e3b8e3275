// How numbers are written on the page, in one place.

/** Whole hours, rounded down; less than one in minutes. `12 hours`, `1 hour`, `40 minutes` */
export function hoursText(hours: number): string {
  if (hours < 1) return counted(Math.floor(hours * 60), 'minute')
  return counted(Math.floor(hours), 'hour')
}

/** The same where rides were followed for `horizon` hours only. `more than 48 hours` */
export function lastsText(hours: number, horizon: number): string {
  return hours >= horizon ? `more than ${hoursText(horizon)}` : hoursText(hours)
}

/** The same, short enough for a table of many figures. `7`, `48+`, `40 min` */
export function shortHours(hours: number, horizon: number): string {
  if (hours >= horizon) return `${Math.floor(horizon)}+`
  return hours > 0 && hours < 1 ? `${Math.floor(hours * 60)} min` : String(Math.floor(hours))
}

/** `24 hours`, `1.5 hours`: what somebody asked for, as asked. */
export function lengthText(hours: number): string {
  return counted(Number(hours.toFixed(1)), 'hour')
}

/** How long something may be off. [min] */
export function gapText(minutes: number | null): string {
  if (minutes === null) return 'any time'
  if (minutes === 0) return 'not at all'
  if (minutes < 120 && minutes % 60 !== 0) return counted(Math.floor(minutes), 'minute')
  return hoursText(minutes / 60)
}

export function counted(count: number, noun: string): string {
  return `${grouped(count)} ${noun}${count === 1 ? '' : 's'}`
}

/** Stays on the line of its number. */
const PERCENT = '\u00a0%'

/** A share that is good, rounded down: only what is whole is 100 %. */
export function percentDown(share: number): string {
  return `${Math.floor(share * 100 + 1e-9)}${PERCENT}`
}

/** A stated share, or a charge, to the nearest. */
export function percent(share: number): string {
  return `${Math.round(share * 100)}${PERCENT}`
}

/** `46 of 100 cases`; no case and every case only where it is so. */
export function casesText(share: number): string {
  if (share === 0) return 'no case'
  if (share === 1) return 'every case'
  const hundred = Math.floor(share * 100 + 1e-9)
  return hundred === 0 ? 'fewer than 1 of 100 cases' : `${hundred} of 100 cases`
}

/** `7,000`, `4.5`: a group of three set off, as in all regions that we have words for. */
export function grouped(value: number): string {
  return String(Number(value.toFixed(2))).replace(/\B(?=(\d{3})+(?!\d))(?<!\.\d*)/g, ',')
}

/** `a, b and c` */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}
