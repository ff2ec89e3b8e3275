// How much memory a command holds: how large the part of the heap for new objects may become, in all
// threads of a process, and what is given back before the long work.
//
// The part for new objects doubles with all that lives on, to 32 MB a thread, and never shrinks.
// Loading a program makes it grow, and a ride, which lives in columns, has no use for it; other
// answers are slower without. Where a thread starts, the setting is back at growing.

import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'

export function keepHeapSmall(): void {
  setFlagsFromString('--semi-space-growth-factor=1')
}

export function letHeapGrow(): void {
  setFlagsFromString('--semi-space-growth-factor=2')
}

/** Gives back what reading a house left over, some 20 MB, which an engine would keep for later. */
export function giveBack(): void {
  setFlagsFromString('--expose-gc')
  const collect: unknown = runInNewContext('globalThis.gc')
  if (typeof collect === 'function') collect()
}
