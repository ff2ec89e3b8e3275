// The answer in one sentence with its conditions, what stays on, the middle case, the stacks.

import { cutView } from '../cut/cut-view.js'
import { outcome } from '../cut/outcome.js'
import type { PageFacts } from '../facts.js'
import { type Html, html } from '../html/html.js'
import type { AnswerWords } from '../words/answer.js'
import type { CutWords } from '../words/cut.js'
import { bullets, section, table } from './parts.js'

export function answerSection({ answer, equipped }: PageFacts, words: AnswerWords): Html {
  return html`<header><p class="house">${answer.house}${equipped.house.invented ? html` <span class="note">${words.invented}</span>` : null}</p>
<h1>${words.headline} <span class="counted">${words.countedOn}.</span></h1>
${words.first === '' ? null : html`<p class="first">${words.first} <a href="#findings">${words.firstLink}</a>.</p>`}</header>
<section id="conditions" aria-labelledby="conditions-title"><h2 id="conditions-title">${words.conditionsTitle}</h2>
<dl>${Object.entries(words.conditions).map(([name, text]) => html`<div><dt>${name}</dt><dd>${text}</dd></div>`)}</dl>
${words.hardest === '' ? null : html`<p><strong>${words.hardest}</strong></p>`}
<p>${words.designed}</p>
</section>
`
}

export function loadsSection({ promised }: PageFacts, words: AnswerWords): Html {
  const rows = promised.loads.map((load) => {
    const [name, ...cells] = words.loadRow(load)
    return [load.firstToFail ? `${name} (${words.firstOut})` : String(name), ...cells]
  })
  const kept = promised.loads.filter(({ toleranceBasis }) => toleranceBasis !== null)
  return section(
    'loads',
    words.loadsTitle,
    html`<p>${words.loadsLead}</p>${table(words.loadHead, rows, words.loadsTitle)}
${kept.length === 0 ? null : html`<p>${words.keepsLead}</p>${bullets(kept.map(words.keeps))}`}`,
  )
}

export function middleSection(facts: PageFacts, words: AnswerWords, cut: CutWords): Html {
  const view = cutView(facts.prepared, facts.middle)
  return section(
    'one-cut',
    words.middleTitle,
    html`<p>${words.middleLead}</p>${outcome(view, cut, 'middle', true)}`,
  )
}

export function stacksSection({ stacks }: PageFacts, words: AnswerWords): Html | null {
  if (stacks.length < 2) return null
  const isPriced = stacks.some(({ price }) => price !== null)
  const shown = (cells: readonly string[]): string[] => cells.filter((_, i) => isPriced || i !== 1)
  return section(
    'stacks',
    words.stacksTitle,
    html`<p>${words.stacksLead}</p>${table(
      shown(words.stackHead),
      stacks.map((stack) => shown(words.stackRow(stack))),
      words.stacksTitle,
    )}${isLess(stacks) ? html`<p>${words.moreIsLess}</p>` : null}${isPriced ? html`<p class="note">${words.pricesNote}</p>` : null}`,
  )
}

/** Whether some larger stack lasts to the end less often than a smaller one. */
function isLess(stacks: PageFacts['stacks']): boolean {
  return stacks.some(({ figures }, i) => {
    const before = stacks[i - 1]?.figures.share
    return before != null && figures.share !== null && figures.share < before - 0.01
  })
}
