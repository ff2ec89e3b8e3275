import { AREAS, INK, LINES, PARTS } from '@tideover/figures'
import { describe, expect, it } from 'vitest'
import { contrast, DEFICIENCIES, difference } from './colours.js'

// Six times what is just seen (2.3, Mahy et al. 1994) and, in grey, a third lighter or darker:
// our own bounds; no norm is known for areas that also carry their names.
const LEAST_DIFFERENCE = 15
const LEAST_CONTRAST = 1.35

/** Areas that lie on or beside each other somewhere. */
const NEIGHBOURS: readonly (readonly string[])[] = [
  [AREAS.sun, AREAS.grid, AREAS.generator, AREAS.battery],
  [AREAS.sun, AREAS.generator],
  [AREAS.sun, AREAS.battery],
  [AREAS.grid, AREAS.battery],
  [AREAS.critical, AREAS.comfort, AREAS.intoBattery, AREAS.losses, AREAS.grid],
  [AREAS.critical, AREAS.losses],
  [AREAS.comfort, AREAS.losses, AREAS.conversion, AREAS.battery],
  PARTS,
]

describe('the measures of colours', () => {
  it('agree with what is known of black, white and grey', () => {
    // WCAG 2.1: black on white is 21; #767676 on white is the lightest grey that passes 4.5.
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9)
    expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5)
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5)
    // CIE: L* of white is 100, of black 0.
    expect(difference('#000000', '#ffffff')).toBeCloseTo(100, 1)
    for (const rows of Object.values(DEFICIENCIES)) {
      for (const row of rows) expect(row[0] + row[1] + row[2]).toBeCloseTo(1, 5)
    }
  })

  it('see that red and green of one lightness are lost on eyes without green', () => {
    expect(difference('#b05a3c', '#6f7d3c')).toBeGreaterThan(LEAST_DIFFERENCE)
    expect(difference('#b05a3c', '#6f7d3c', 'no green')).toBeLessThan(LEAST_DIFFERENCE)
  })
})

describe('colours of neighbours', () => {
  const pairs = NEIGHBOURS.flatMap((row) =>
    row.slice(1).map((color, i): [string, string] => [row[i]!, color]),
  )

  it.each(pairs)('%s and %s stay apart in grey print', (a, b) => {
    expect(contrast(a, b)).toBeGreaterThan(LEAST_CONTRAST)
  })

  it.each(pairs)('%s and %s stay apart for eyes that see few colours', (a, b) => {
    for (const sees of [undefined, 'no red', 'no green', 'no blue'] as const) {
      expect(difference(a, b, sees), sees).toBeGreaterThan(LEAST_DIFFERENCE)
    }
  })

  it('are not needed to tell lines apart: what is alike in grey has other strokes', () => {
    for (const [i, a] of LINES.entries()) {
      for (const b of LINES.slice(i + 1)) {
        const isApart = contrast(a.color, b.color) > LEAST_CONTRAST || a.dash !== b.dash
        expect(isApart, `${a.color} and ${b.color}`).toBe(true)
      }
    }
  })

  it('bear words: 4.5 to 1, WCAG 2.1 success criterion 1.4.3', () => {
    for (const dark of PARTS.slice(0, 2)) expect(contrast(dark, '#ffffff')).toBeGreaterThan(4.5)
    for (const light of PARTS.slice(2)) expect(contrast(light, INK)).toBeGreaterThan(4.5)
  })
})
