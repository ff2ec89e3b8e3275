// The house that answers when none is named.

import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const HERE = dirname(fileURLToPath(import.meta.url))

/** In a clone the demo houses lie in data-samples; an installed command carries the croft. */
export const DEFAULT_HOUSE = {
  name: 'the croft, an invented house',
  path(): string {
    const inClone = join(HERE, '../../../data-samples/croft.yaml')
    return existsSync(inClone) ? inClone : join(HERE, '../croft.yaml')
  },
}
