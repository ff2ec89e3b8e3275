// The customer's page: what it says, worked out, the file itself, and the papers that stay at the house.

export { escapeHtml } from './escape.js'
export { factsOf, type PageFacts, type PageQuestion } from './facts.js'
export { MOST_BYTES, pageHtml } from './page.js'
export { pageScript } from './page-script.js'
export { circuitList } from './papers/circuit-list.js'
export { cutCard } from './papers/cut-card.js'
export {
  type PapersInput,
  type PapersOptions,
  type PaperWords,
  papersInput,
} from './papers/input.js'
export { islandTestSheet } from './papers/island-test-sheet.js'
export { papers, papersPage } from './papers/papers.js'
export { PAPERS_CSS } from './papers/papers-css.js'
export { settingsSheet } from './papers/settings-sheet.js'
export { yearlyChecks } from './papers/yearly-checks.js'
export type { Carried } from './replay/carried.js'
export { carriedOf } from './replay/carry.js'
export { type Choice, Player, questionOf, without } from './replay/player.js'
