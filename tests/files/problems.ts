// The lines an input error would print, for tests of refusals.

import { InputError } from '@tideover/core'

/** Runs something that must be refused and returns its message, one line a fault. */
export function refusal(run: () => unknown): string {
  try {
    run()
  } catch (error) {
    if (error instanceof InputError) return error.message
    throw error
  }
  throw new Error('was not refused')
}
