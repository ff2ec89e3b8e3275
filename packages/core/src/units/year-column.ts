// Room for what a house made ready keeps of a year.
//
// It may be memory that threads can share: whoever works in threads hands the house on without
// copying its columns. An engine does not count such memory when it looks for what to collect, so
// houses made ready one after another take ordinary memory.

/** Room for a value a minute, all 0. [n] */
export type NewColumn = (n: number) => Float64Array

export const ownColumn: NewColumn = (n) => new Float64Array(n)

/** Ordinary memory where the engine has no other: a page that is not isolated. */
export const sharedColumn: NewColumn = (n) =>
  new Float64Array(sharedRoom(n * Float64Array.BYTES_PER_ELEMENT))

/** Shared room of so many bytes, all 0. */
export function sharedRoom(bytes: number): ArrayBuffer | SharedArrayBuffer {
  return typeof SharedArrayBuffer === 'undefined'
    ? new ArrayBuffer(bytes)
    : new SharedArrayBuffer(bytes)
}
