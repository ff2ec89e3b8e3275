// House files: plain values out of YAML and JSON, lines of fields, slips of the pen in one line.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { houseFromText, readHouseFile } from '@tideover/files'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { refusal } from './problems.js'

const YAML = `# a croft
house: Skerry Croft
site: { latitudeDeg: 58.2,
        timezone: Europe/London }
person: { from: "07:00" }
loads:
  - { name: boiler pump, w: 60 }
  - name: fridge
    w: 90
    cycle:
      onMinutes: 14
`
const refused = (text: string) => refusal(() => houseFromText(text, 'h.yaml'))
let folder = ''

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'house-'))
})
afterAll(() => {
  rmSync(folder, { recursive: true })
})

it('reads YAML to plain values', () => {
  expect(houseFromText(YAML, 'h.yaml').plain).toEqual({
    house: 'Skerry Croft',
    site: { latitudeDeg: 58.2, timezone: 'Europe/London' },
    person: { from: '07:00' },
    loads: [
      { name: 'boiler pump', w: 60 },
      { name: 'fridge', w: 90, cycle: { onMinutes: 14 } },
    ],
  })
})

it('reads JSON, with a byte order mark and tabs as well', () => {
  const text = '\uFEFF{\n\t"house": "A",\n\t"loads": [\n\t\t{ "w": 1 }\n\t]\n}\n'
  const file = houseFromText(text, 'h.json')
  expect(file.plain).toEqual({ house: 'A', loads: [{ w: 1 }] })
  expect(file.lineOf('loads[0].w')).toBe(4)
})

it.each([
  ['house', 2],
  ['site', 3],
  ['site.timezone', 4],
  ['loads[0].w', 7],
  ['loads.1.w', 9],
  ['loads[1].cycle.onMinutes', 11],
  ['loads.fridge.w', 9],
  ['loads[1].cycle.offMinutes', 10],
  ['loads[7].w', 6],
  ['stack.module.usableKwh', 2],
])('finds %s, or the group that would hold it, in line %i', (path, line) => {
  expect(houseFromText(YAML, 'h.yaml').lineOf(path)).toBe(line)
})

it.each([
  ['', 'h.yaml:1 must be a house in YAML or JSON, got an empty file'],
  [
    '# nothing yet\n',
    'h.yaml:1 must be a group of fields (house:, site:, …), got nothing but comments',
  ],
  ['- a\n- b\n', 'h.yaml:1 must be a group of fields (house:, site:, …), got a list of 2'],
  ['house: A\nsite:\n\tlatitudeDeg: 1\n', 'h.yaml:3 must be indented by spaces, got a tab'],
  ['house: A\nhouse: B\n', 'h.yaml:2 must be a field written once, got "house: B"'],
  ['house: A\n---\nhouse: B\n', 'h.yaml:2 must be one house (no second part after ---), got "---"'],
])('refuses %j in one line', (text, message) => {
  expect(refused(text)).toBe(message)
})

it('refuses an open quote and a missing bracket with a line', () => {
  expect(refused('house: "A\nsite: 1\n')).toMatch(/^h\.yaml:\d+ must be /)
  expect(refused('{ "house": "A", "loads": [ 1, 2 }\n')).toMatch(/^h\.yaml:1 must be /)
})

it('refuses a missing file, a directory and binary data', () => {
  expect(refusal(() => readHouseFile(join(folder, 'none.yaml')))).toMatch(
    /none\.yaml must be a file that can be read, got no such file$/,
  )
  expect(refusal(() => readHouseFile(folder))).toMatch(
    /must be a file that can be read, got a directory$/,
  )
  const path = join(folder, 'h.yaml')
  writeFileSync(path, Buffer.from([1, 2, 0, 3]))
  expect(refusal(() => readHouseFile(path))).toBe(`${path}:1 must be a text file, got binary data`)
})

it('reads a file written in Latin-1', () => {
  const path = join(folder, 'latin.yaml')
  writeFileSync(path, Buffer.from('house: Caf\xe9 # 20 \xb0C\n', 'latin1'))
  expect(readHouseFile(path).plain).toEqual({ house: 'Café' })
})
