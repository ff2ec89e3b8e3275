import { decimate } from '@tideover/figures'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

/** A column with gaps, a number of stretches and a minute that matters. */
const CASES = fc
  .record({
    column: fc.array(
      fc.oneof(
        { weight: 20, arbitrary: fc.float({ noNaN: true, noDefaultInfinity: true }) },
        { weight: 1, arbitrary: fc.constant(Number.NaN) },
      ),
      { minLength: 1, maxLength: 400 },
    ),
    stretches: fc.integer({ min: 1, max: 60 }),
    share: fc.double({ min: 0, max: 0.999, noNaN: true }),
  })
  .map(({ share, ...rest }) => ({ ...rest, matters: Math.floor(share * rest.column.length) }))

const known = (values: readonly number[]) => values.filter((value) => !Number.isNaN(value))
const drawn = (column: readonly number[], rows: Int32Array) => Array.from(rows, (i) => column[i]!)

describe('a long column drawn with few rows', () => {
  it('never loses the least or the greatest, the ends, or a minute that matters', () => {
    fc.assert(
      fc.property(CASES, ({ column, stretches, matters }) => {
        const rows = decimate(column, stretches, [matters])
        const [all, seen] = [known(column), known(drawn(column, rows))]
        expect(Math.min(...seen)).toBe(Math.min(...all))
        expect(Math.max(...seen)).toBe(Math.max(...all))
        for (const row of [0, column.length - 1, matters]) expect(rows).toContain(row)
      }),
    )
  })

  it('rises, names each row once, and leaves gaps where they are', () => {
    fc.assert(
      fc.property(CASES, ({ column, stretches }) => {
        const rows = Array.from(decimate(column, stretches))
        expect(rows).toEqual([...new Set(rows)].sort((a, b) => a - b))
        for (let i = 1; i < rows.length; i++) {
          // What is joined by a line has no gap in between.
          const [from, to] = [rows[i - 1]!, rows[i]!]
          if (Number.isNaN(column[from]!) || Number.isNaN(column[to]!)) continue
          expect(column.slice(from, to).some(Number.isNaN)).toBe(false)
        }
      }),
    )
  })

  it('keeps the extremes of each stretch, so that no day of a year looks calmer than it was', () => {
    fc.assert(
      fc.property(CASES, ({ column, stretches }) => {
        const rows = new Set(decimate(column, stretches))
        const count = Math.min(column.length, stretches)
        for (let s = 0; s < count; s++) {
          const from = Math.floor((s * column.length) / count)
          const to = Math.floor(((s + 1) * column.length) / count)
          const inside = known(column.slice(from, to))
          if (inside.length === 0) continue
          const seen = known(column.filter((_, i) => i >= from && i < to && rows.has(i)))
          expect([Math.min(...seen), Math.max(...seen)]).toEqual([
            Math.min(...inside),
            Math.max(...inside),
          ])
        }
      }),
    )
  })

  it('draws a leap year of minutes with two rows a column of pixels at most', () => {
    // 366 * 1440 = 527 040 minutes; a single minute at 3 in a year at 5, and one at 9.
    const year = new Float64Array(527_040).fill(5)
    year[123_456] = 3
    year[400_000] = 9
    const rows = decimate(year, 800, [77_777])
    expect(rows.length).toBeLessThanOrEqual(2 * 800 + 3)
    for (const row of [123_456, 400_000, 77_777, 0, 527_039]) expect(rows).toContain(row)
  })

  it('has nothing to draw of nothing', () => {
    expect(decimate([])).toEqual(new Int32Array(0))
  })
})
