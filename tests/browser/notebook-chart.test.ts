// A page of the gallery, drawn by a real browser with no network.

import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { notebookHtml } from '@tideover/notebook/gallery'
import { startRunner } from '@tideover/notebook/run'
import { afterAll, expect, it } from 'vitest'
import { BROWSER, skipped } from './browser.js'

const folder = mkdtempSync(join(tmpdir(), 'tideover-'))
const FIXTURES = fileURLToPath(new URL('../notebook/fixtures/', import.meta.url))
const NOTEBOOK = 'chart-and-table.ipynb'
const runner = startRunner(FIXTURES)
afterAll(() => {
  runner.close()
  rmSync(folder, { recursive: true, force: true })
})

it.skipIf(skipped)('a chart of a notebook draws', { timeout: 90_000 }, async () => {
  const { cells } = await runner.run(NOTEBOOK)
  const notebook = JSON.parse(readFileSync(`${FIXTURES}${NOTEBOOK}`, 'utf8'))
  const page = join(folder, 'page.html')
  writeFileSync(
    page,
    notebookHtml(
      notebook,
      cells.map(({ outputs }) => outputs),
    ),
  )
  const options = ['--headless', '--no-sandbox', '--disable-gpu', '--virtual-time-budget=10000']
  const dom = execFileSync(
    BROWSER,
    [...options, '--host-resolver-rules=MAP * ~NOTFOUND', '--dump-dom', `file://${page}`],
    { encoding: 'utf8', maxBuffer: 1 << 26, stdio: ['ignore', 'pipe', 'ignore'] },
  )
  expect(dom).toContain('main-svg')
  expect(dom).toContain('>Still on after so many hours</text>')
  expect(dom).not.toContain('This chart draws once')
})
