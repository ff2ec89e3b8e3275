// The set-up cell and a chart, as a notebook puts them out, drawn by a real browser with no network.

import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Output, startRunner } from '@tideover/notebook/run'
import { afterAll, expect, it } from 'vitest'

const BROWSER = '/usr/bin/chromium'
const folder = mkdtempSync(join(tmpdir(), 'tideover-'))
const runner = startRunner(fileURLToPath(new URL('../notebook/fixtures', import.meta.url)))
afterAll(() => {
  runner.close()
  rmSync(folder, { recursive: true, force: true })
})

const html = (one: Output) => (one.kind === 'display' ? (one.data['text/html'] ?? '') : '')

// On a person's machine it may be missing, where everything is checked it may not.
const skipped = !existsSync(BROWSER) && !process.env.CI

it.skipIf(skipped)('a chart of a notebook draws', { timeout: 90_000 }, async () => {
  const { cells } = await runner.run('chart-and-table.ipynb')
  const page = join(folder, 'page.html')
  writeFileSync(
    page,
    `<!doctype html>${cells
      .flatMap(({ outputs }) => outputs)
      .map(html)
      .join('')}`,
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
