// The five papers that stay at the house, one A4 sheet each.

import { escapeHtml } from '../escape.js'
import { circuitList } from './circuit-list.js'
import { cutCard } from './cut-card.js'
import type { PapersInput } from './input.js'
import { islandTestSheet } from './island-test-sheet.js'
import { PAPERS_CSS } from './papers-css.js'
import { settingsSheet } from './settings-sheet.js'
import { yearlyChecks } from './yearly-checks.js'

/**
 * Five `<section class="sheet">` in order: cut card, settings, circuits, island test, yearly
 * checks. They want `PAPERS_CSS` in the page.
 */
export function papers(input: PapersInput): string {
  return [cutCard, settingsSheet, circuitList, islandTestSheet, yearlyChecks]
    .map((paper) => paper(input))
    .join('\n')
}

/** The papers as a file of their own, to be printed: no script, no network. */
export function papersPage(input: PapersInput): string {
  const title = escapeHtml(`${input.prepared.house.house}: papers`)
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>body{margin:0}${PAPERS_CSS}</style>
</head>
<body>
${papers(input)}
</body>
</html>
`
}
