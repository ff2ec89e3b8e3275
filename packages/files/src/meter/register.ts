// Counting meters: a register that only ever rises is no load until neighbours are subtracted.

/** A house's connection rarely carries more: an interval beyond it is no interval's energy. [kW] */
const BEYOND_A_HOUSE_KW = 100

/** Headers that name a register beyond doubt. */
const NAMED_REGISTER = /regist|cumul|lifetime|meter.?reading|z.hlerstand/i

/** Readings from which "only ever rises" is evidence by itself. */
const TELLING = 24

/** A register stands this many times higher than it moves between two readings. */
const STANDS_HIGHER = 10

/**
 * Whether an energy column is the reading of a register.
 *
 * So where it never falls, rises overall, and either is named like one, is long enough that a
 * load would have fallen, or would be no plausible load.
 *
 * @param values  Energy column on its axis. [n], [kWh], NaN skipped
 */
export function isRegister(values: Float64Array, header: string, stepMinutes: number): boolean {
  let first = Number.NaN
  let last = Number.NaN
  let largest = 0
  let n = 0
  for (const value of values) {
    if (Number.isNaN(value)) continue
    if (value < last) return false
    if (n === 0) first = value
    else largest = Math.max(largest, value - last)
    last = value
    n++
  }
  if (!(last > first)) return false
  if (NAMED_REGISTER.test(header) || n >= TELLING) return true
  const mayBe = /total|import|index/i.test(header)
  if (mayBe && first > STANDS_HIGHER * largest) return true
  return (last * 60) / stepMinutes > BEYOND_A_HOUSE_KW
}

/** Whether a header names a register beyond doubt. */
export function namesRegister(header: string): boolean {
  return NAMED_REGISTER.test(header)
}

/** Interval of the first reading that is lower than the one before it, or -1. */
export function firstFall(values: Float64Array): number {
  let last = Number.NaN
  for (let i = 0; i < values.length; i++) {
    if (values[i]! < last) return i
    if (!Number.isNaN(values[i]!)) last = values[i]!
  }
  return -1
}

/** Energy between neighbouring readings. [n] readings give [n - 1] intervals, same unit. */
export function betweenReadings(values: Float64Array): Float64Array {
  const energy = new Float64Array(Math.max(0, values.length - 1))
  for (let i = 0; i < energy.length; i++) energy[i] = values[i + 1]! - values[i]!
  return energy
}
