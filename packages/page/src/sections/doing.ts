// What to do, what was assumed, what was not checked, what was found, and the cautions.

import type { PageFacts } from '../facts.js'
import { type Html, html } from '../html/html.js'
import type { AssumedWords } from '../words/assumed.js'
import type { DoingWords } from '../words/doing.js'
import { bullets, section } from './parts.js'

export function doingSection(words: DoingWords): Html {
  return section(
    'what-to-do',
    words.title,
    html`<ol>${words.steps.map((step) => html`<li>${step}</li>`)}</ol>`,
  )
}

export function assumedSection(words: AssumedWords): Html {
  return section(
    'assumed',
    words.title,
    html`${words.slips.length === 0 ? null : html`<p><strong>${words.slipsTitle}</strong></p>${bullets(words.slips)}`}
${bullets(words.points)}`,
  )
}

export function uncheckedSection(words: DoingWords): Html {
  return section(
    'not-checked',
    words.uncheckedTitle,
    html`<p>${words.uncheckedLead}</p>${bullets(words.unchecked)}`,
  )
}

export function findingsSection({ findings }: PageFacts, words: DoingWords): Html {
  const graded = (['mend', 'look'] as const).map((grade) => ({
    grade,
    found: findings.filter((finding) => finding.grade === grade),
  }))
  const isNone = graded.every(({ found }) => found.length === 0)
  return section(
    'findings',
    words.findingsTitle,
    isNone
      ? html`<p>${words.noFindings}</p>`
      : html`${graded.map(({ grade, found }) =>
          found.length === 0
            ? null
            : html`<h3>${words.grades[grade]}</h3>${bullets(found.map(words.finding))}`,
        )}<p class="note">${words.findingsMore}</p>`,
  )
}

export function cautionsSection({ answer }: PageFacts, words: DoingWords): Html {
  return section('cautions', words.cautionsTitle, bullets(answer.cautions))
}
