// Bytes to text, and the readers that start from a path.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { decodeText, readMeter, readWeather } from '@tideover/files'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { refusal } from './problems.js'

let folder = ''
const file = (name: string, bytes: Uint8Array) => {
  const path = join(folder, name)
  writeFileSync(path, bytes)
  return path
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'text-'))
})
afterAll(() => {
  rmSync(folder, { recursive: true })
})

it('reads UTF-8 with or without its mark, UTF-16 and Latin-1', () => {
  expect(decodeText(Buffer.from('20 °C'), 'f')).toBe('20 °C')
  expect(decodeText(Buffer.from('\uFEFF20 °C'), 'f')).toBe('20 °C')
  expect(decodeText(Buffer.from('\uFEFF20 °C', 'utf16le'), 'f')).toBe('20 °C')
  expect(decodeText(Buffer.from('20 °C', 'latin1'), 'f')).toBe('20 °C')
})

it('refuses a spreadsheet and a program', () => {
  expect(refusal(() => decodeText(Buffer.from('PK\x03\x04'), 'f'))).toBe(
    'f:1 must be a text file, got a zip or spreadsheet file: export it as CSV',
  )
  expect(refusal(() => decodeText(Uint8Array.of(1, 0, 2), 'f'))).toContain('got binary data')
})

it('reads a weather file whose header has a Latin-1 degree sign', () => {
  const text = 'time,ghi_w_m2,air [\xb0C]\n2024-06-01T00:00Z,0,11\n2024-06-01T00:01Z,0,12\n'
  const record = readWeather(file('w.csv', Buffer.from(text, 'latin1')))
  expect([...(record.airC ?? [])]).toEqual([11, 12])
})

it('reads a meter file from its path, with line ends of Windows', () => {
  const text = 'time,kw\r\n2024-06-01 00:00,1\r\n2024-06-01 00:01,2\r\n'
  const path = file('m.csv', Buffer.from(text))
  const record = readMeter(path, 'Europe/Oslo')
  expect(record.name).toBe(path)
  expect(record.startMs).toBe(Date.UTC(2024, 4, 31, 22))
})

it('refuses a path that is none in one line', () => {
  const path = join(folder, 'none.csv')
  expect(refusal(() => readMeter(path, 'UTC'))).toBe(
    `${path} must be a file that can be read, got no such file`,
  )
  expect(refusal(() => readWeather(folder))).toContain('got a directory')
})
