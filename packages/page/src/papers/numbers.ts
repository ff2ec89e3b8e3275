// Figures as they are said on paper: units always, hours rounded down.

/** `0.4` -> `40 %` */
export function percent(share: number): string {
  return `${Number((100 * share).toFixed(1))} %`
}

/** To the whole percent, as a display shows it. */
export function wholePercent(share: number): string {
  return `${Math.round(100 * share)} %`
}

/** At most so many decimals, none that say nothing. */
export function short(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)))
}

/** Whole hours rounded down, minutes below one; a figure at the horizon was not seen to end. */
export function hoursSaid(hours: number, horizonHours: number): string {
  if (hours < 1) return `${Math.floor(60 * hours)} minutes`
  const whole = Math.floor(hours)
  return `${hours >= horizonHours ? 'over ' : ''}${whole} hour${whole === 1 ? '' : 's'}`
}

/** For how long something may be off. @param minutes  null for any gap */
export function gapSaid(minutes: number | null): string {
  if (minutes === null) return 'may be off for long'
  if (minutes < 1) return 'must not go off'
  const time = minutes < 120 ? `${Math.floor(minutes)} min` : `${Math.floor(minutes / 60)} h`
  return `may be off ${time}`
}
