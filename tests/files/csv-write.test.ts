// Numbers to text: 15 significant digits, shortest form, nothing for what is missing.

import { csvChunks, csvText, numberText, rowsOf } from '@tideover/files'
import { expect, it } from 'vitest'

it('writes a header, rows and a final line feed', () => {
  expect(csvText(['time_utc', 'kw'], [['2025-01-01T00:00Z', 0.5]])).toBe(
    'time_utc,kw\n2025-01-01T00:00Z,0.5\n',
  )
})

it.each([
  [0.1 + 0.2, '0.3'],
  [1 / 3, '0.333333333333333'],
  [-1 / 3, '-0.333333333333333'],
  [123456789.12345678, '123456789.123457'],
  [1e-7, '1e-7'],
  [1e-5 / 3, '0.00000333333333333333'],
  [-0, '0'],
  [2 ** 53, '9007199254740990'],
  [525600, '525600'],
  [Number.NaN, ''],
])('writes %d as "%s"', (value, text) => {
  expect(numberText(value)).toBe(text)
})

it('leaves NaN and null empty and quotes commas, quotes and line ends', () => {
  const rows = [[Number.NaN, null, 'a,b', 'say "on"', true]]
  expect(csvText(['a', 'b', 'c', 'd', 'e'], rows)).toBe('a,b,c,d,e\n,,"a,b","say ""on""",true\n')
})

it('takes columns that share an axis, and refuses two lengths', () => {
  expect(csvText(['i', 'kw'], rowsOf([[1, 2], Float64Array.of(0.25, 0.75)]))).toBe(
    'i,kw\n1,0.25\n2,0.75\n',
  )
  expect(() => csvText(['a', 'b'], rowsOf([[1], [1, 2]]))).toThrow('one length, got 1 and 2')
})

it('gives the same text in pieces', () => {
  const rows = Array.from({ length: 10 }, (_, i) => [i, i / 7])
  const pieces = [...csvChunks(['i', 'x'], rows, 3)]
  expect(pieces).toHaveLength(4)
  expect(pieces.join('')).toBe(csvText(['i', 'x'], rows))
})

it('refuses a row of another width and an infinite number', () => {
  expect(() => csvText(['a', 'b'], [[1]])).toThrow('row 0 must have 2 cells, got 1')
  expect(() => csvText(['a'], [[Number.POSITIVE_INFINITY]])).toThrow('finite or NaN, got Infinity')
})
