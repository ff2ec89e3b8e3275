// The customer's page in a real browser, with no network.

import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type CutQuestion, type MeterRecord, prepare, traceCut } from '@tideover/core'
import { readHouseFile } from '@tideover/files'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { SAMPLES } from '../cli/command.js'
import { type MadePage, madePage, pageFolder } from '../page/made-page.js'
import { launch, skipped } from './browser.js'

const PREPARING = { timeout: 120_000 }
const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js')

/** What the page leaves for whoever compares. */
interface Last {
  readonly storedKwh: number[]
  readonly events: { readonly minute: number; readonly text: string }[]
  readonly startMs: number
  readonly syntheticYear: number
  readonly ms: number
}

const { plain } = readHouseFile(`${SAMPLES}surgery.yaml`)
const NASTY = `<img src=x onerror="alert(1)"> '&" 🦊`
// A meter of the waiting room with its plugs: quarter hours of a week, one missing.
const WEEK: MeterRecord = {
  name: 'waiting.csv',
  startMs: Date.UTC(2025, 5, 30, 12),
  stepMinutes: 15,
  kw: Float64Array.from({ length: 672 }, (_, i) => (i === 100 ? Number.NaN : 0.1 + (i % 7) / 9)),
  notes: [],
}
const METERED = { name: 'waiting room', tier: 'comfort', file: 'waiting.csv' }
const FILES = { meters: new Map([['waiting.csv', WEEK]]) }
/** The longest that the door lets in, with nowhere to break. */
const LONGEST = `${'endless'.repeat(28)}🦊🦊`
const write = pageFolder()
const trouble: string[] = []
let made: MadePage
let browser: Browser
let page: Page

beforeAll(async () => {
  if (skipped) return
  const named = structuredClone(plain) as { house: string; loads: Record<string, unknown>[] }
  named.house = `${NASTY}</title><script>alert(2)</script>`
  named.loads[1]!.name = NASTY
  named.loads[2]!.name = LONGEST
  const waiting = named.loads.findIndex(({ name }) => name === 'waiting room')
  named.loads[waiting] = { ...METERED, dropOrder: 2 }
  made = madePage(named, FILES, { month: 7 }, [1])
  browser = await launch()
  page = await browser.newPage({ viewport: { width: 360, height: 800 } })
  page.on('console', (message) => trouble.push(message.text()))
  page.on('pageerror', (error) => trouble.push(error.message))
  page.on('dialog', (dialog) => trouble.push(`dialog ${dialog.message()}`))
  const address = write('page.html', made.html)
  page.on('request', (request) => {
    if (request.url() !== address) trouble.push(`request ${request.url()}`)
  })
  await page.goto(address)
}, 300_000)
afterAll(async () => browser?.close())

/** Plays what is chosen and waits for it. */
async function played(): Promise<Last> {
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'tideover'))
  await page.locator('#play-form button').click()
  await page.waitForFunction(() => 'tideover' in globalThis, null, PREPARING)
  return (await page.evaluate('globalThis.tideover.last')) as Last
}

async function choose(choice: Record<string, string>): Promise<void> {
  for (const [id, value] of Object.entries(choice)) {
    await page.locator(`#play-${id}`).evaluate((field, to) => {
      Object.assign(field, { value: to })
    }, value)
  }
}

function expectSame(last: Last, off: readonly string[], question: Partial<CutQuestion>): void {
  const { house } = made.prepared
  const loads = house.loads.map((load) =>
    off.includes(load.name) ? { ...load, tier: 'gridOnly' as const } : load,
  )
  const prepared = off.length === 0 ? made.prepared : prepare({ ...house, loads }, FILES)
  const story = traceCut(prepared, { startMs: last.startMs, hours: 24, ...question })
  expect(last.syntheticYear).toBe(story.syntheticYear)
  expect(last.events).toEqual(story.events.map(({ minute, text }) => ({ minute, text })))
  expect(last.storedKwh).toEqual([...story.trace.storedKwh])
}

describe.skipIf(skipped)('the page in a browser', { timeout: 240_000 }, () => {
  it('plays the cuts that trace traces, to the bit', async () => {
    await choose({ month: '7', day: '14', hour: '18', hours: '24', sky: 'dull' })
    const first = await played()
    // 18 h in New Zealand's winter is 6 h UTC.
    expect(new Date(first.startMs).toISOString()).toBe('2025-07-14T06:00:00.000Z')
    expectSame(first, [], {})
    await choose({ month: '12', day: '31', hour: '3', hours: '72' })
    expectSame(await played(), [], { hours: 72 })
    await choose({ month: '2', hour: '12', hours: '12', sky: 'none' })
    await page.locator('#play-month').dispatchEvent('change')
    // The 31st of December has become the last day that February has.
    expect(await page.locator('#play-day').inputValue()).toBe('28')
    expect(await page.locator('#play-day option:disabled').count()).toBe(3)
    const last = await played()
    expect(new Date(last.startMs).toISOString()).toBe('2025-02-27T23:00:00.000Z')
    expectSame(last, [], { hours: 12, sky: 'none' })
    await choose({ month: '6', day: '3', hour: '9', hours: '48', sky: 'typical' })
    const typical = await played()
    expectSame(typical, [], { hours: 48, sky: 'typical', syntheticYear: typical.syntheticYear })
  })

  it('plays with loads switched off as with loads that are not on the island', async () => {
    await choose({ month: '7', day: '14', hour: '18', hours: '24', sky: 'dull' })
    const off = [NASTY, 'waiting room']
    for (const name of off) await page.getByRole('checkbox', { name: name }).uncheck()
    expectSame(await played(), off, {})
    for (const name of off) await page.getByRole('checkbox', { name: name }).check()
    expectSame(await played(), [], {})
  })

  it('plays a cut again in 30 ms, half of ten at least', async () => {
    const times: number[] = []
    for (let hour = 0; hour < 10; hour++) {
      await choose({ hour: String(hour) })
      times.push((await played()).ms)
    }
    times.sort((a, b) => a - b)
    expect(times[4]).toBeLessThan(30)
  })

  it('is used with the keyboard alone', async () => {
    await page.locator('#play-month').focus()
    await page.keyboard.press('Tab')
    expect(await page.evaluate('document.activeElement.id')).toBe('play-day')
    await page.evaluate(() => Reflect.deleteProperty(globalThis, 'tideover'))
    await page.locator('#play-form button').focus()
    await page.keyboard.press('Enter')
    await page.waitForFunction(() => 'tideover' in globalThis, null, PREPARING)
    expect(await page.locator('#play-status').textContent()).toContain('From ')
  })

  it('shows a clear sky behind the fold only', async () => {
    expect(await page.locator('#play-sky option[value=clear]').count()).toBe(0)
    expect(await page.locator('#play-clear').isVisible()).toBe(false)
    await page.locator('#engineering > summary').click()
    await page.locator('#play-clear').click()
    await page.locator('#clear-result .chart').waitFor()
  })

  it('fits a phone without sideways scroll, everything unfolded, the longest name in it', async () => {
    await page.evaluate(
      "document.querySelectorAll('details').forEach((each) => { each.open = true })",
    )
    expect(await page.locator('#engineering rect title').count()).toBe(2 * 24)
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360)
  })

  it('has no fault that axe finds', async () => {
    const bare = await browser.newPage({ bypassCSP: true, viewport: { width: 360, height: 800 } })
    await bare.goto(page.url())
    await bare.evaluate(
      "document.querySelectorAll('details').forEach((each) => { each.open = true })",
    )
    await bare.evaluate(readFileSync(AXE, 'utf8'))
    const { violations } = (await bare.evaluate('globalThis.axe.run()')) as {
      violations: { id: string; nodes: { html: string }[] }[]
    }
    await bare.close()
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  })

  it('prints on A4 with nothing beyond the edge', async () => {
    // 210 mm less margins of 15 mm at 96 to the inch.
    await page.setViewportSize({ width: Math.floor((180 / 25.4) * 96), height: 1000 })
    await page.emulateMedia({ media: 'print' })
    const wide = await page.evaluate(
      "[...document.querySelectorAll('main *')].filter((each) => each.getBoundingClientRect().right > innerWidth + 1).map((each) => each.outerHTML.slice(0, 80))",
    )
    expect(wide).toEqual([])
    // A closed fold would be a heading with nothing below it.
    expect(await page.locator('#engineering').isVisible()).toBe(true)
    await page.evaluate("document.getElementById('engineering').open = false")
    expect(await page.locator('#engineering').isVisible()).toBe(false)
    expect((await page.pdf({ preferCSSPageSize: true })).subarray(0, 5).toString()).toBe('%PDF-')
    await page.emulateMedia({ media: 'screen' })
  })

  it('says names that hold markup as text, asks for nothing and finds no fault', async () => {
    expect(await page.locator('header .house').textContent()).toContain('<script>alert(2)</script>')
    expect(await page.locator('main img, main script').count()).toBe(0)
    expect(trouble).toEqual([])
  })
})
