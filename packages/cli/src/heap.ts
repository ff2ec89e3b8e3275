// How large the part of the heap for new objects may become. [all threads of a process]
//
// It doubles with all that lives on, to 32 MB a thread, and never shrinks. Loading a program makes
// it grow, and a ride, which lives in columns, has no use for it; other answers are slower without.
// Where a thread starts, the setting is back at growing.

import { setFlagsFromString } from 'node:v8'

export function keepHeapSmall(): void {
  setFlagsFromString('--semi-space-growth-factor=1')
}

export function letHeapGrow(): void {
  setFlagsFromString('--semi-space-growth-factor=2')
}
