// JupyterLab as `npm run lab` starts it, in a real browser: a notebook runs from top to bottom,
// and a long run is followed and interrupted.
//
// It takes a copy of the notebooks, for JupyterLab saves what it opens.

import { type ChildProcess, spawn } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launch, skipped as noBrowser } from './browser.js'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const TOKEN = 'only-for-this-test'

// `npm run check` installs JupyterLab and asks for this; it is too slow to stand among all tests.
const skipped = noBrowser || process.env.TIDEOVER_LAB === undefined
if (skipped) {
  console.warn('JupyterLab is not tried in a browser: that takes Chromium and TIDEOVER_LAB=yes.')
}

const folder = mkdtempSync(join(tmpdir(), 'tideover-'))
let lab: ChildProcess
let browser: Browser
let page: Page
let address = ''
let said = ''

beforeAll(async () => {
  if (skipped) return
  copyNotebooks()
  const port = await freePort()
  address = `http://127.0.0.1:${port}`
  const options = ['--no-browser', `--ServerApp.root_dir=${folder}`]
  const args = [...options, `--port=${port}`, `--IdentityProvider.token=${TOKEN}`]
  lab = spawn(process.execPath, [join(ROOT, '.ci/lab.mjs'), ...args], { cwd: ROOT })
  for (const stream of [lab.stdout, lab.stderr]) {
    stream?.setEncoding('utf8').on('data', (text: string) => {
      said += text
    })
  }
  await answering()
  browser = await launch()
  page = await browser.newPage({ viewport: { width: 1200, height: 1600 } })
}, 120_000)

afterAll(async () => {
  await browser?.close()
  if (lab !== undefined && lab.exitCode === null) {
    const ended = new Promise((resolve) => lab.on('exit', resolve))
    lab.kill()
    await ended
  }
  rmSync(folder, { recursive: true, force: true })
}, 30_000)

function copyNotebooks(): void {
  const notebooks = join(folder, 'notebooks')
  mkdirSync(notebooks)
  cpSync(join(ROOT, 'notebooks/01-how-long.ipynb'), join(notebooks, '01-how-long.ipynb'))
  symlinkSync(join(ROOT, 'notebooks/node_modules'), join(notebooks, 'node_modules'), 'dir')
  symlinkSync(join(ROOT, 'data-samples'), join(folder, 'data-samples'), 'dir')
  const cell = (id: string, source: string) => ({
    cell_type: 'code',
    id,
    metadata: {},
    source,
    outputs: [],
    execution_count: null,
  })
  const long = {
    cells: [
      cell(
        'tools',
        "import { ask } from '@tideover/notebook'\nimport { loadHouse } from '@tideover/files'",
      ),
      cell(
        'long',
        "await ask.ride(loadHouse('../data-samples/croft.yaml'), { month: 1, hours: 240, years: 200 })",
      ),
    ],
    metadata: { kernelspec: { display_name: 'TypeScript', language: 'typescript', name: 'tslab' } },
    nbformat: 4,
    nbformat_minor: 5,
  }
  writeFileSync(join(notebooks, 'long.ipynb'), JSON.stringify(long))
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number }
      server.close(() => resolve(port))
    })
  })
}

async function answering(): Promise<void> {
  while (lab.exitCode === null) {
    const answer = await fetch(`${address}/api?token=${TOKEN}`).catch(() => null)
    if (answer?.ok) return
    await new Promise((resolve) => setTimeout(resolve, 200))
  }
  throw new Error(`JupyterLab ended:\n${said}`)
}

async function runAll(notebook: string): Promise<void> {
  await page.goto(`${address}/lab/tree/notebooks/${notebook}?token=${TOKEN}&reset`)
  await page.locator('.jp-Notebook .jp-Cell').first().waitFor({ timeout: 60_000 })
  await idle()
  await page.getByRole('menuitem', { name: 'Run', exact: true }).click()
  await page.locator('.lm-Menu-itemLabel', { hasText: /^Run All Cells$/ }).click()
}

/** The kernel waits for something to run. */
async function idle(): Promise<void> {
  await page.getByText('TypeScript | Idle').waitFor({ timeout: 60_000 })
}

describe.skipIf(skipped)('JupyterLab', () => {
  it('runs a notebook from top to bottom, with its charts and tables', {
    timeout: 300_000,
  }, async () => {
    await runAll('01-how-long.ipynb')
    const output = page.locator('.jp-OutputArea-output')
    await output.filter({ hasText: 'defaults were taken for them.' }).waitFor({ timeout: 240_000 })
    const chart = page.locator('[data-tideover-figure]')
    expect(await chart.count()).toBe(2)
    await expect.poll(() => chart.locator('.main-svg').count()).toBeGreaterThan(1)
    const captions = await output.locator('caption').allTextContents()
    expect(captions).toContain('Skerry Croft: cuts that start in January')
    expect(await page.locator('[data-mime-type$="stderr"]').allTextContents()).toEqual([])
  })

  it('shows how far a long run is, and ends it when it is interrupted', {
    timeout: 240_000,
  }, async () => {
    await runAll('long.ipynb')
    const line = page.locator('.jp-OutputArea-output', { hasText: 'every minute of the month' })
    await line.filter({ hasText: /: \d+ of \d+/ }).waitFor({ timeout: 60_000 })
    await page
      .locator('[data-command="notebook:interrupt-kernel"], [data-jp-item-name=interrupt] button')
      .first()
      .click()
    const told = page.locator('[data-mime-type$="stderr"]')
    await told.filter({ hasText: 'nterrupted' }).waitFor({ timeout: 30_000 })
    await line.waitFor({ state: 'detached' })
    await idle()
    // Saving touches folders that the compiler has looked into; the kernel has to live on.
    await page.keyboard.press('Control+s')
    await page.locator('.jp-Notebook .jp-Cell').last().locator('.cm-content').fill('6 * 7')
    const answer = page.locator('.jp-OutputArea-output').filter({ hasText: /^42\s*$/ })
    // Just after a fault the kernel turns away what was waiting to run.
    const runAgain = async (): Promise<number> => {
      await page.keyboard.press('Control+Enter')
      return answer.count()
    }
    await expect.poll(runAgain, { timeout: 30_000, interval: 1000 }).toBe(1)
  })
})
