// The papers as a real browser lays them out and prints them: five A4 pages, nothing cut off.

import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PAPERS_CSS, type PapersInput, papers } from '@tideover/page'
import { afterAll, describe, expect, it } from 'vitest'
import { BROWSER, skipped } from '../../browser/browser.js'
import { crowded, shipped, small } from './houses.js'

const kept = process.env.TIDEOVER_PAPERS
const folder = kept ?? mkdtempSync(join(tmpdir(), 'tideover-'))
afterAll(() => {
  if (kept === undefined) rmSync(folder, { recursive: true, force: true })
})

const MEASURE = `<script>for (const s of document.querySelectorAll('.sheet')) {
  const b = s.querySelector('.body')
  s.dataset.over = Math.max(s.scrollHeight - s.clientHeight, s.scrollWidth - s.clientWidth,
    b.scrollHeight - b.clientHeight, b.scrollWidth - b.clientWidth)
}</script>`

const HOUSES: Readonly<Record<string, () => PapersInput>> = {
  croft: () => shipped('croft'),
  surgery: () => shipped('surgery'),
  bungalow: () => shipped('bungalow'),
  'a crowd of loads': () => small(crowded()),
  'a greater crowd': () => small(crowded(50)),
}

function browse(...args: string[]): string {
  const options = ['--headless', '--no-sandbox', '--disable-gpu', '--window-size=1000,1400']
  return execFileSync(BROWSER, [...options, ...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
    stdio: ['ignore', 'pipe', 'ignore'],
  })
}

/** Every house on one page, so that the browser starts once to measure and once to print. */
function pageOfAll(): string {
  const houses = Object.entries(HOUSES).map(
    ([name, input]) => `<div data-house="${name}">${papers(input())}</div>`,
  )
  return `<!doctype html><html lang="en"><meta charset="utf-8"><style>body{margin:0}${PAPERS_CSS}</style>${houses.join('')}${MEASURE}`
}

describe.skipIf(skipped)('printed', () => {
  it('papers are five pages a house, with room for all of it', { timeout: 180_000 }, () => {
    const page = join(folder, 'papers.html')
    const pdf = join(folder, 'papers.pdf')
    writeFileSync(page, pageOfAll())
    const parts = browse('--dump-dom', `file://${page}`).split('data-house="').slice(1)
    const over = parts.map((part) => [
      part.slice(0, part.indexOf('"')),
      ...[...part.matchAll(/data-over="(-?\d+)"/g)].map(([, px]) => Number(px)),
    ])
    expect(over).toEqual(Object.keys(HOUSES).map((name) => [name, 0, 0, 0, 0, 0]))
    browse(`--print-to-pdf=${pdf}`, '--no-pdf-header-footer', `file://${page}`)
    const pages = readFileSync(pdf, 'latin1').match(/\/Type\s*\/Page\b/g) ?? []
    expect(pages).toHaveLength(5 * over.length)
  })
})
