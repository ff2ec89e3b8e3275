// The customer's page: what it says, worked out, and the file itself.

export { factsOf, type PageFacts, type PageQuestion } from './facts.js'
export { MOST_BYTES, pageHtml } from './page.js'
export { pageScript } from './page-script.js'
export type { Carried } from './replay/carried.js'
export { carriedOf } from './replay/carry.js'
export { type Choice, Player, questionOf, without } from './replay/player.js'
