// The customer's page: the papers of it so far.

export { escapeHtml } from './escape.js'
export { circuitList } from './papers/circuit-list.js'
export { cutCard } from './papers/cut-card.js'
export { type PapersInput, type PapersOptions, papersInput } from './papers/input.js'
export { islandTestSheet } from './papers/island-test-sheet.js'
export { papers } from './papers/papers.js'
export { PAPERS_CSS } from './papers/papers-css.js'
export { settingsSheet } from './papers/settings-sheet.js'
export { type PaperWords, wordsFor } from './papers/words.js'
export { yearlyChecks } from './papers/yearly-checks.js'
