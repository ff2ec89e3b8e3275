// Times and counts as a person reads them in a note or a message.

/** `2 min`, `3 h 20 min`, `5 days 2 h`. */
export function duration(minutes: number): string {
  const days = Math.floor(minutes / 1440)
  const hours = Math.floor((minutes % 1440) / 60)
  const rest = Math.round(minutes % 60)
  const parts: string[] = []
  if (days > 0) parts.push(count(days, 'day'))
  if (hours > 0) parts.push(`${hours} h`)
  if ((rest > 0 && days === 0) || parts.length === 0) parts.push(`${rest} min`)
  return parts.join(' ')
}

/** `1 gap`, `3 gaps`. */
export function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`
}

/** `2007-02-22 22:58` of a moment counted in UTC [ms]. */
export function moment(ms: number): string {
  return new Date(ms).toISOString().slice(0, 16).replace('T', ' ')
}

/** `UTC+1`, `UTC-5`, `UTC+5:30`. */
export function offsetText(minutes: number): string {
  if (minutes === 0) return 'UTC'
  const size = Math.abs(minutes)
  const rest = size % 60
  const tail = rest === 0 ? '' : `:${String(rest).padStart(2, '0')}`
  return `UTC${minutes < 0 ? '-' : '+'}${Math.floor(size / 60)}${tail}`
}
