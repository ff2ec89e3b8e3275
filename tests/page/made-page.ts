// A small house made into a page, as the command does it, for tests.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import {
  checkHouse,
  type HouseFiles,
  type Prepared,
  prepare,
  rideJobs,
  runRideJob,
  yearMonth,
} from '@tideover/core'
import { factsOf, type PageFacts, type PageQuestion, pageHtml, pageScript } from '@tideover/page'
import { afterAll } from 'vitest'

export interface MadePage {
  readonly prepared: Prepared
  readonly facts: PageFacts
  readonly html: string
}

/**
 * One synthetic year of `typical` and short cuts, so that it takes seconds.
 *
 * @param otherMonths  of the year by the hour, beside the month that is asked about
 */
export function madePage(
  plain: unknown,
  files: HouseFiles = {},
  asked: Partial<PageQuestion> = {},
  otherMonths: readonly number[] = [],
): MadePage {
  const prepared = prepare(checkHouse(plain), files)
  const question = { month: 1, hours: 24, years: 1, ...asked }
  const results = rideJobs(prepared, question).map((job) => runRideJob(prepared, question, job))
  const others = otherMonths.map((month) => yearMonth(prepared, question, month).row)
  const facts = factsOf(prepared, files, question, results, plain, others)
  return { prepared, facts, html: pageHtml(facts, pageScript()) }
}

/** A folder for pages that goes when the tests of a file are over. */
export function pageFolder(): (name: string, html: string) => string {
  const folder = mkdtempSync(join(tmpdir(), 'tideover-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  return (name, html) => {
    const path = join(folder, name)
    writeFileSync(path, html)
    return `file://${path}`
  }
}
