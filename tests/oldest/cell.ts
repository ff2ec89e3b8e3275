// Compiled by the TypeScript that runs cells of notebooks, as it resolves and checks.

export * as core from '@tideover/core'
export * as figures from '@tideover/figures'
export * as files from '@tideover/files'
export * as notebook from '@tideover/notebook'
export * as gallery from '@tideover/notebook/gallery'
export * as run from '@tideover/notebook/run'
export * as threads from '@tideover/notebook/threads'
