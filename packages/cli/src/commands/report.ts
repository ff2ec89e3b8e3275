import { writeFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { resolve } from 'node:path'
import { equip, InputError, rideFrom } from '@tideover/core'
import { factsOf, pageHtml, pageScript, papersInput, papersPage } from '@tideover/page'
import { monthAsked } from '../darkest-month.js'
import { openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { say } from '../output.js'
import { RideThreads } from '../ride-threads.js'

/** `report`: the customer's page. */
export async function report(path: string | undefined, words: Words): Promise<void> {
  const reader = new OptionReader(words)
  const asked = {
    ...scenarioOf(reader),
    hours: reader.hours(),
    sky: reader.sky(['dull', 'none']) as 'dull' | 'none',
    years: reader.whole('years', 1, 200) ?? 30,
  }
  const month = reader.month()
  const threads = reader.whole('threads', 1, 64) ?? availableParallelism()
  checkPaths(reader, words)
  reader.done()
  const crew = new RideThreads(threads, true)
  const { prepared, plain, files } = openHouse(path, true)
  const question = monthAsked(prepared, { ...asked, month })
  // What is wrong with the question is told before anything is worked out.
  equip(prepared, question)
  const { results, months } = await crew.resultsAndMonths(prepared, question)
  const facts = factsOf(prepared, files, question, results, plain, months)
  const page = pageHtml(facts, pageScript())
  const out = String(words.out)
  write('out', out, page)
  say(`${out}: ${Math.ceil(Buffer.byteLength(page) / 1000)} kB, one file that works offline.`)
  if (typeof words.papers !== 'string') return
  const ride = rideFrom(prepared, question, results, plain)
  write(
    'papers',
    words.papers,
    papersPage(papersInput(prepared, ride, { files, plain, months: facts.months })),
  )
  say(`${words.papers}: five sheets of A4 to print.`)
}

/** A page never takes the place of a house file, nor of the other page. */
function checkPaths(reader: OptionReader, { out, papers }: Words): void {
  for (const [option, path] of [['out', out] as const, ['papers', papers] as const]) {
    if (path === undefined || /\.html?$/i.test(String(path))) continue
    reader.fault(option, 'a file whose name ends in .html', path)
  }
  if (papers !== undefined && resolve(String(papers)) === resolve(String(out))) {
    reader.fault('papers', 'another file than --out', papers)
  }
}

function write(option: string, path: string, text: string): void {
  try {
    writeFileSync(path, text)
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code ?? String(error)
    throw new InputError(`--${option}`, 'a file that can be written', `${path} (${reason})`)
  }
}
