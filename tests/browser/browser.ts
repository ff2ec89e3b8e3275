// The real browser that tests drive.

import { existsSync } from 'node:fs'
import { type Browser, chromium } from 'playwright-core'

export const BROWSER = '/usr/bin/chromium'

/** On a person's machine it may be missing, where everything is checked it may not. */
export const skipped = !existsSync(BROWSER) && !process.env.CI
if (skipped) console.warn(`${BROWSER} is missing: nothing is tried in a browser.`)

export function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: BROWSER,
    args: ['--no-sandbox', '--disable-background-networking'],
  })
}
