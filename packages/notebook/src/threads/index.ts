// Long answers in threads: told as they go, ended when asked.

export * as threaded from './answers.js'
export type { Ground } from './parts.js'
export type { Running } from './run-parts.js'
