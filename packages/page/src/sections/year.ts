// The year by the hour, for the electrician: every month under the sky of the answer.

import type { HourCell, MonthRow } from '@tideover/core'
import { QUIET } from '@tideover/figures'
import type { PageFacts } from '../facts.js'
import { type Html, html } from '../html/html.js'
import type { YearWords } from '../words/year.js'
import { type GridCell, grid, SHADES, shadeKey, shadeOf } from './grid.js'

export function yearPart({ months, answer }: PageFacts, words: YearWords): Html | null {
  if (months.length === 0) return null
  const shares = ({ share }: HourCell): GridCell => ({
    text: words.share(share),
    shade: shadeOf(share),
  })
  const hours = ({ p05Hours }: HourCell): GridCell => ({
    text: words.hours(p05Hours),
    shade: shadeOf(p05Hours / answer.cutHours),
  })
  const byThree = (cell: (of: HourCell) => GridCell): (readonly [string, ...GridCell[]])[] =>
    months.map((row) => [words.month(row.month), ...row.byThreeHours.map(cell)])
  return html`<h3>${words.title}</h3><p>${words.lead}</p>
${hourMap(months, words)}${shadeKey(words.shareKey)}
<h4>${words.sharesTitle}</h4>
${grid(words.spans, byThree(shares), words.sharesTitle)}
<h4>${words.hoursTitle}</h4><p>${words.hoursLead}</p>
${grid(words.spans, byThree(hours), words.hoursTitle)}${shadeKey(words.hoursKey)}
<h4>${words.monthsTitle}</h4>
${grid(
  words.monthHead,
  months.map((row) => [words.month(row.month), ...words.monthRow(row).map((text) => ({ text }))]),
  words.monthsTitle,
)}`
}

const WIDTH = 360
const LEFT = 32
const CELL = 13.5
const HIGH = 14

/** Months down, hours of the clock across, one square each. */
function hourMap(months: readonly MonthRow[], words: YearWords): Html {
  const bottom = HIGH * months.length
  return html`<svg class="chart" viewBox="0 0 ${WIDTH} ${bottom + 22}" role="img" aria-labelledby="year-alt"><title id="year-alt">${words.alt}</title>
<g stroke="${QUIET}" stroke-width="0.4">${months.map((row, m) =>
    row.byHour.map(
      (cell, h) =>
        html`<rect x="${LEFT + CELL * h}" y="${HIGH * m}" width="${CELL}" height="${HIGH}" fill="${SHADES[shadeOf(cell.share)].fill}"><title>${words.cell(row.month, cell)}</title></rect>`,
    ),
  )}</g>
${months.map(
  (row, m) =>
    html`<text x="${LEFT - 4}" y="${HIGH * m + 11}" text-anchor="end" fill="${QUIET}">${words.month(row.month)}</text>`,
)}
${[0, 6, 12, 18, 24].map(
  (hour) =>
    html`<text x="${LEFT + CELL * hour}" y="${bottom + 15}" text-anchor="${hour === 24 ? 'end' : hour === 0 ? 'start' : 'middle'}" fill="${QUIET}">${words.clock(hour)}</text>`,
)}
</svg>`
}
