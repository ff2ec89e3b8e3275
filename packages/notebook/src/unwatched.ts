// tslab's compiler without its watching of files.
//
// It watches every folder in which it looked for a module, and ends the process when two of its
// watchers speak before a cell runs: saving a notebook or building a package is enough.

import { createRequire } from 'node:module'

interface System {
  watchFile: () => Watcher
  watchDirectory: () => Watcher
}
interface Watcher {
  close(): void
}

/** Call it before tslab makes a converter. A module that changes is then seen after a restart. */
export function unwatched(): void {
  const fromHere = createRequire(import.meta.url)
  const fromTslab = createRequire(fromHere.resolve('tslab/dist/converter.js'))
  const { sys } = fromTslab('@tslab/typescript-for-tslab') as { sys: System }
  const silent = (): Watcher => ({ close: () => {} })
  sys.watchFile = silent
  sys.watchDirectory = silent
}
