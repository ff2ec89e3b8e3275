// How every notebook stands in the repository: without results, begun alike, and listed.

import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const FOLDER = fileURLToPath(new URL('../../notebooks/', import.meta.url))
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith('.ipynb'))
const FIRST = "import { ask, frame, setUp, show, table } from '@tideover/notebook'\nsetUp()"

interface Cell {
  readonly id: string
  readonly cell_type: string
  readonly source: string | string[]
  readonly outputs?: unknown[]
  readonly execution_count?: number | null
}

describe.each(FILES)('%s', (file) => {
  const { cells } = JSON.parse(readFileSync(`${FOLDER}${file}`, 'utf8')) as { cells: Cell[] }
  const code = cells.filter(({ cell_type }) => cell_type === 'code')
  const sourceOf = ({ source }: Cell) => [source].flat().join('')

  it('stands in the repository without results (npm run notebooks -- --strip)', () => {
    expect(code.length).toBeGreaterThan(2)
    for (const { outputs, execution_count } of code) {
      expect([outputs, execution_count]).toEqual([[], null])
    }
  })

  it('begins with a heading, a paragraph and the set-up cell', () => {
    expect(sourceOf(cells[0]!)).toMatch(/^# .+\n\n\*?[A-Z]/)
    expect(sourceOf(code[0]!)).toBe(FIRST)
  })

  it('has a name for each cell, once', () => {
    const ids = cells.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('is listed, names no machine and ends with what it is not', () => {
    expect(readFileSync(`${FOLDER}README.md`, 'utf8')).toContain(`](${file})`)
    const all = cells.map(sourceOf).join('\n')
    expect(all).not.toMatch(/\/(home|tmp|root|work|Users)\//)
    expect(all).toContain('## What this is not')
  })
})
