// `report`: the customer's page from the command.

import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { type Ended, folder, SMALL_HOUSE, tideover } from './command.js'

const { path, write } = folder()
const out = join(path, 'small.html')
const house = write('small.yaml', SMALL_HOUSE)
let ended: Ended

beforeAll(async () => {
  const words = ['--hours', '2', '--years', '1', '--out', out, '--threads', '1']
  ended = await tideover('report', house, ...words)
}, 120_000)

describe('report', () => {
  it('writes one file and names it with its size', () => {
    expect(ended).toMatchObject({ status: 0, err: '' })
    const bytes = readFileSync(out).length
    expect(ended.out).toBe(`${out}: ${Math.ceil(bytes / 1000)} kB, one file that works offline.\n`)
    expect(bytes).toBeLessThan(8_000_000)
  })

  it('says the answer first, rounded down, under the dull sky of the darkest month', () => {
    // 165 minutes by hand outlast a cut of two hours whenever it starts (see command.ts).
    const page = readFileSync(out, 'utf8')
    const [, headline, counted] = /<h1>([^<]*) <span[^>]*>([^<]*)</.exec(page)!
    expect(headline).toBe(
      'In a power cut of 2 hours in January, under a dull sky, what must stay on stays on to ' +
        'the end, whenever it starts: even at worst it lasts 2 hours.',
    )
    expect(counted).toBe('Counted with a battery charged to 50\u00a0% and worn to 80\u00a0%.')
  })

  it('never takes the place of a house file, nor one page that of the other', async () => {
    const [overHouse, overPage] = await Promise.all([
      tideover('report', house, '--out', house),
      tideover('report', house, '--out', out, '--papers', join(path, '.', 'small.html')),
    ])
    expect([overHouse.status, overHouse.err]).toEqual([
      2,
      `--out must be a file whose name ends in .html, got ${JSON.stringify(house).slice(0, 60)}\n`,
    ])
    expect([
      overPage.status,
      overPage.err.startsWith('--papers must be another file than --out'),
    ]).toEqual([2, true])
    expect(readFileSync(house, 'utf8')).toBe(SMALL_HOUSE)
  })

  it('names nothing that would have to be loaded', () => {
    const page = readFileSync(out, 'utf8')
    const body = page.slice(0, page.indexOf('<script'))
    expect(body.match(/<(link|img|iframe|object|embed)\b|\s(src|href(?!="#)|style|on\w+)=/g)).toBe(
      null,
    )
    const policy = /Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1]
    expect(policy).toMatch(/^default-src &#39;none&#39;; script-src &#39;sha256-/)
  })

  it('promises nothing under a clear sky, and needs a place to write to', async () => {
    const clear = await tideover('report', house, '--out', out, '--sky', 'clear')
    expect(clear).toMatchObject({ status: 2, out: '' })
    expect(clear.err).toBe('--sky must be one of dull, none, got "clear"\n')
    expect((await tideover('report', house)).status).toBe(2)
  })
})
