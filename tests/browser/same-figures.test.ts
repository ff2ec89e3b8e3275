// A ride worked out in a browser is the ride worked out here, to the last digit.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { checkHouse, prepare, rideAnswer } from '@tideover/core'
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
    `import { checkHouse, prepare, rideAnswer } from ${core}
    globalThis.ride = (house, question) =>
      JSON.stringify(rideAnswer(prepare(checkHouse(house)), question))`,
  )
  const from = createRequire(file('packages/page/package.json'))
  const { build } = await import(pathToFileURL(from.resolve('rolldown')).href)
  const output = join(folder, 'ride.js')
  await build({ input: entry, platform: 'browser', output: { file: output, format: 'iife' } })
  return output
}

it.skipIf(skipped)('a ride of the croft', { timeout: 120_000 }, async () => {
  const { plain } = loadHouse(file('data-samples/croft.yaml'))
  const question = { month: 1, hours: 6, years: 1, winters: 10 }
  const here = JSON.stringify(rideAnswer(prepare(checkHouse(plain)), question))
  const browser = await launch()
  try {
    const page = await browser.newPage()
    await page.addScriptTag({ path: await bundled() })
    const there = await page.evaluate(
      ([house, asked]) => (globalThis as unknown as { ride: Ride }).ride(house, asked),
      [plain, question] as const,
    )
    expect(there).toBe(here)
  } finally {
    await browser.close()
  }
})

type Ride = (house: unknown, question: unknown) => string
