// The rides of a month worked out in a browser are those worked out here, to the minute.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { checkHouse, prepare, startRows, startsOfMonth } from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { afterAll, expect, it } from 'vitest'
import { launch, skipped } from './browser.js'

const file = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'tideover-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** One script with core and its libraries, as the page is bundled. */
async function bundled(): Promise<string> {
  const entry = join(folder, 'entry.mjs')
  const core = JSON.stringify(file('packages/core/dist/index.js'))
  writeFileSync(
    entry,
    `import { checkHouse, prepare, startRows, startsOfMonth } from ${core}
    globalThis.january = (house, question) => {
      const prepared = prepare(checkHouse(house))
      return JSON.stringify([...startRows(prepared, startsOfMonth(prepared, question, 1))])
    }`,
  )
  const from = createRequire(file('packages/page/package.json'))
  const { build } = await import(pathToFileURL(from.resolve('rolldown')).href)
  const output = join(folder, 'ride.js')
  await build({ input: entry, platform: 'browser', output: { file: output, format: 'iife' } })
  return output
}

it.skipIf(skipped)('every start of a January of the croft', { timeout: 120_000 }, async () => {
  const { plain } = loadHouse(file('data-samples/croft.yaml'))
  const question = { hours: 24, sky: 'typical', syntheticYear: 3 } as const
  const prepared = prepare(checkHouse(plain))
  const here = [...startRows(prepared, startsOfMonth(prepared, question, 1))]
  expect(here).toHaveLength(31 * 1440)
  const browser = await launch()
  try {
    const page = await browser.newPage()
    await page.addScriptTag({ path: await bundled() })
    const there = await page.evaluate(
      ([house, asked]) => (globalThis as unknown as { january: January }).january(house, asked),
      [plain, question] as const,
    )
    expect(there === JSON.stringify(here)).toBe(true)
  } finally {
    await browser.close()
  }
})

type January = (house: unknown, question: unknown) => string
