// What an answer says about the records it stands on.

import { fileURLToPath } from 'node:url'
import { prepare } from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { expect, it } from 'vitest'

const BUNGALOW = fileURLToPath(new URL('../../../data-samples/bungalow.yaml', import.meta.url))
const { house, files } = loadHouse(BUNGALOW)

function notesAt(latitudeDeg: number): string {
  return prepare({ ...house, site: { ...house.site, latitudeDeg } }, files).notes.join(' ')
}

it('asks about a weather file of another place', () => {
  // A degree of latitude is 111 km: 10 000 km of quarter meridian over 90.
  expect(notesAt(37.1)).toMatch(/was recorded at 36\.1, -79\.95, 111 km from the house/)
  expect(notesAt(36.2)).not.toContain('was recorded at')
})
