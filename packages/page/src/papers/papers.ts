// The five papers that stay at the house, one A4 sheet each.

import { circuitList } from './circuit-list.js'
import { cutCard } from './cut-card.js'
import type { PapersInput } from './input.js'
import { islandTestSheet } from './island-test-sheet.js'
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
