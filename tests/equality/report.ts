// The kept report of the long comparison, in sections: a run that leaves one out leaves it as it stood.

import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const REPORT = fileURLToPath(new URL('report.md', import.meta.url))

const HEAD = `# The pass against walking

Written by \`npm run equality\`, each part by the last run that took it.
`

/** The parts in their order. */
const SECTIONS = ['Demo houses', 'Random islands', 'More random islands'] as const
export type Section = (typeof SECTIONS)[number]

export interface SectionFacts {
  /** What was compared, a sentence. */
  readonly about: string
  readonly rows: readonly (readonly [what: string, count: number])[]
  readonly differences: readonly string[]
}

/** Writes one part anew. */
export function writeSection(section: Section, { about, rows, differences }: SectionFacts): void {
  const table = rows.map(([what, count]) => `| ${what} | ${count.toLocaleString('en-GB')} |\n`)
  const found = differences.map((line) => `- ${line}\n`)
  const fresh =
    `${about} Node ${process.version}.\n\n| | |\n|---|---|\n${table.join('')}` +
    (found.length > 0 ? `\n${found.join('')}` : '')
  const kept = existsSync(REPORT) ? readFileSync(REPORT, 'utf8') : ''
  const parts = SECTIONS.flatMap((name) => {
    const body = name === section ? fresh : bodyOf(kept, name)
    return body === null ? [] : [`\n## ${name}\n\n${body}`]
  })
  writeFileSync(REPORT, HEAD + parts.join(''))
}

/** What a report says under a heading; null where it has no such heading. */
function bodyOf(report: string, name: Section): string | null {
  const part = report.split(/^## /m).find((each) => each.startsWith(`${name}\n`))
  return part === undefined ? null : `${part.slice(name.length).trim()}\n`
}
