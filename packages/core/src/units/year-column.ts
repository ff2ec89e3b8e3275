// Room for what a house made ready keeps of a year.
//
// It is memory that threads can share, where the engine has such: whoever works in threads hands
// the house on without copying its columns. A page that is not isolated has none; there it is
// ordinary memory.

/** Room for a value a minute, all 0. [n] */
export function yearColumn(n: number): Float64Array {
  return new Float64Array(yearRoom(n * Float64Array.BYTES_PER_ELEMENT))
}

/** A column with the values of another. */
export function yearCopy(column: Float64Array): Float64Array {
  const out = yearColumn(column.length)
  out.set(column)
  return out
}

/** Room of so many bytes, all 0. */
export function yearRoom(bytes: number): ArrayBuffer | SharedArrayBuffer {
  return typeof SharedArrayBuffer === 'undefined'
    ? new ArrayBuffer(bytes)
    : new SharedArrayBuffer(bytes)
}
