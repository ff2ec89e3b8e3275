// Puts the page together: one file, no network, nothing that another file could not say.

import { createHash } from 'node:crypto'
import type { PageFacts } from './facts.js'
import { type Html, html, jsonMarkup, ownMarkup } from './html/html.js'
import { packed } from './replay/carry.js'
import { answerSection, loadsSection, middleSection, stacksSection } from './sections/answer.js'
import {
  assumedSection,
  cautionsSection,
  doingSection,
  findingsSection,
  uncheckedSection,
} from './sections/doing.js'
import { engineeringFold } from './sections/engineering.js'
import { playSection } from './sections/play.js'
import { yearPart } from './sections/year.js'
import { STYLE } from './style.js'
import { answerWords } from './words/answer.js'
import { assumedWords } from './words/assumed.js'
import { cutWords } from './words/cut.js'
import { doingWords } from './words/doing.js'
import { engineeringWords } from './words/engineering.js'
import { playWords } from './words/play.js'
import { type Region, regionOf } from './words/region.js'
import { yearWords } from './words/year.js'

/** Mail servers take so much with ease; a page that would be larger goes without its replay. [bytes] */
export const MOST_BYTES = 8_000_000
/** For everything but the measured minutes of the house. [bytes] */
const REST_BYTES = 1_000_000

/**
 * The customer's page.
 *
 * @param script  the bundle of `browser/main.ts`, from `pageScript`
 * @returns       one HTML document
 */
export function pageHtml(facts: PageFacts, script: string): string {
  const region = regionOf(facts.prepared.house.site.timezone)
  const data = jsonMarkup(packed(facts.carried))
  const isCarried = data.markup.length <= MOST_BYTES - REST_BYTES
  return html`<!doctype html>
<html lang="${region.lang}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy(script, STYLE)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${answerWords(region, facts).pageTitle}</title>
<style>${ownMarkup(STYLE)}</style>
</head>
<body>
<main>
${sections(facts, region, isCarried)}
</main>
${
  isCarried
    ? html`<script type="application/json" id="house-data">${data}</script>
<script>${ownMarkup(script)}</script>`
    : null
}
</body>
</html>
`.markup
}

/** Everything a reader sees, in order. Papers to hang up belong behind the cautions. */
function sections(facts: PageFacts, region: Region, isCarried: boolean): Html {
  const answer = answerWords(region, facts)
  const doing = doingWords(region, facts)
  const play = playWords(region, facts.answer.promise)
  return html`${[
    answerSection(facts, answer),
    loadsSection(facts, answer),
    middleSection(facts, answer, cutWords(region)),
    playSection(facts, play, isCarried),
    stacksSection(facts, answer),
    doingSection(doing),
    assumedSection(assumedWords(region, facts)),
    uncheckedSection(doing),
    findingsSection(facts, doing),
    cautionsSection(facts, doing),
    engineeringFold(
      facts,
      engineeringWords(facts),
      yearPart(facts, yearWords(region, facts)),
      play,
      isCarried,
    ),
  ]}`
}

/** Nothing may be loaded, and no script or style run but these two, told by their hashes. */
function policy(script: string, style: string): string {
  const hash = (text: string): string =>
    `'sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}'`
  return [
    "default-src 'none'",
    `script-src ${hash(script)}`,
    `style-src ${hash(style)}`,
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')
}
