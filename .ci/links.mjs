// Every relative link of every page of prose leads to a file, and to a heading where it names one.

import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { ROOT } from './workspace.mjs'

const SKIPPED = new Set(['node_modules', 'dist', '.git', '.venv', '.jupyter', 'coverage'])

const faults = []
let links = 0
for (const page of pagesIn(ROOT)) {
  for (const { target, line } of linksOf(readFileSync(page, 'utf8'))) {
    links++
    const fault = faultOf(page, target)
    if (fault) faults.push(`${relative(ROOT, page)}:${line}: ${target} ${fault}`)
  }
}
for (const fault of faults) console.error(fault)
console.log(`${links} links, ${faults.length} broken`)
process.exitCode = faults.length > 0 ? 1 : 0

function pagesIn(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name)
    if (entry.isDirectory()) return SKIPPED.has(entry.name) ? [] : pagesIn(path)
    return entry.name.endsWith('.md') ? [path] : []
  })
}

/** Targets within the repository of `[text](target)` and `[label]: target`, outside code. */
function linksOf(text) {
  return proseLines(text).flatMap((prose, index) => {
    const inline = [...prose.matchAll(/\]\(\s*<?([^)\s>]+)>?(?:\s+"[^"]*")?\s*\)/g)]
    const defined = [...prose.matchAll(/^\s*\[[^\]]+\]:\s*<?([^\s>]+)/g)]
    return [...inline, ...defined]
      .map(([, target]) => ({ target, line: index + 1 }))
      .filter(({ target }) => !/^([a-z][a-z0-9+.-]*:|\/\/)/i.test(target))
  })
}

function faultOf(page, target) {
  const [path, anchor] = decodeURI(target).split('#')
  const file = path === '' ? page : join(path.startsWith('/') ? ROOT : dirname(page), path)
  if (!existsSync(file)) return 'does not exist'
  if (!anchor || !file.endsWith('.md')) return null
  return headingsOf(readFileSync(file, 'utf8')).has(anchor) ? null : 'has no such heading'
}

/** Names under which headings can be linked to: lower case, no punctuation, a dash for a space. */
function headingsOf(text) {
  const seen = new Map()
  const names = proseLines(text, false)
    .filter((line) => /^#{1,6}\s/.test(line))
    .map((line) => {
      const words = line
        .replace(/^#+\s+/, '')
        .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
        .trim()
      const name = words
        .toLowerCase()
        .replace(/[^\p{L}\p{N}\p{M}_ -]/gu, '')
        .replaceAll(' ', '-')
      const before = seen.get(name) ?? 0
      seen.set(name, before + 1)
      return before === 0 ? name : `${name}-${before}`
    })
  return new Set(names)
}

/** The lines, those inside fences emptied, and without code within a line where asked. */
function proseLines(text, withoutCode = true) {
  let fence = null
  return text.split('\n').map((line) => {
    const mark = /^\s*(```+|~~~+)/.exec(line)?.[1]
    if (mark && (fence === null || mark.startsWith(fence))) {
      fence = fence === null ? mark : null
      return ''
    }
    if (fence !== null) return ''
    return withoutCode ? line.replace(/(`+)[^`]*?\1/g, '') : line
  })
}
