// The schema that the demo houses point at must be the one that the rules yield.

import { readFileSync } from 'node:fs'
import { houseJsonSchema } from '@tideover/core'
import { expect, it } from 'vitest'

const FILE = new URL('../../../data-samples/house.schema.json', import.meta.url)

it('data-samples/house.schema.json is what `tideover schema` prints', () => {
  expect(JSON.parse(readFileSync(FILE, 'utf8'))).toEqual(houseJsonSchema())
})
