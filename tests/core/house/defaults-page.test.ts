// The page of defaults is the table in the README of core; it must be the code's.

import { readFileSync } from 'node:fs'
import { DEFAULTS, type Default } from '@tideover/core'
import { expect, it } from 'vitest'

const PAGE = readFileSync(new URL('../../../packages/core/README.md', import.meta.url), 'utf8')

it.each(Object.entries<Default>(DEFAULTS))(
  '%s stands in the table as the code has it',
  (path, given) => {
    const { value, unit, basis } = given
    const taken = `${Array.isArray(value) ? `${value[0]} in every month` : value} ${unit}`.trim()
    expect(PAGE).toContain(`| \`${path}\` | ${taken} | ${basis} |`)
  },
)
