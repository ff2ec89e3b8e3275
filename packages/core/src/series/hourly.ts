// Air and wind between their hourly values.

/** Wind where there is no record. [m/s] */
export const DEFAULT_WIND_MS = 1

/** An hourly column in the middle of a minute, straight between the middles of the hours. */
export function hourly(column: Float64Array, minute: number): number {
  const position = (minute - 29.5) / 60
  const before = Math.max(0, Math.min(column.length - 1, Math.floor(position)))
  const after = Math.min(column.length - 1, before + 1)
  const share = Math.min(1, Math.max(0, position - before))
  return column[before]! + (column[after]! - column[before]!) * share
}
