// Columns of a result as a danfo.js data frame: for sorting and looking, never for computing,
// for danfo.js adds and multiplies in 32 bits and turns nulls into zeros.

import type { DataFrame } from 'danfojs'

export type Column = ArrayLike<number> | ArrayLike<string> | ArrayLike<boolean>

/** A data frame of columns of one length. The library takes a second or two to load. */
export async function frame(columns: Readonly<Record<string, Column>>): Promise<DataFrame> {
  const lists = Object.entries(columns).map(([name, column]) => [name, Array.from<unknown>(column)])
  const { DataFrame } = await import('danfojs')
  return new DataFrame(Object.fromEntries(lists))
}
