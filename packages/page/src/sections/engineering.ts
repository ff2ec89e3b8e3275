// The fold for the electrician: skies, patterns, the autonomy curve, the bright end.

import type { AutonomyCurve, SkyFigures } from '@tideover/core'
import { GRID, LINES, QUIET } from '@tideover/figures'
import type { PageFacts } from '../facts.js'
import { type Html, html } from '../html/html.js'
import type { EngineeringWords } from '../words/engineering.js'
import type { PlayWords } from '../words/play.js'
import { grid } from './grid.js'
import { bullets } from './parts.js'

export function engineeringFold(
  facts: PageFacts,
  words: EngineeringWords,
  year: Html | null,
  play: PlayWords,
  isCarried: boolean,
): Html {
  const skies = facts.spread.map(
    (spread) => [spread, facts.answer.skies[spread.sky] as SkyFigures] as const,
  )
  const texts = (cells: readonly string[]): { text: string }[] => cells.map((text) => ({ text }))
  return html`<details class="engineering" id="engineering"><summary>${words.title}</summary>
<h3>${words.skiesTitle}</h3><p>${words.skiesLead}</p>
${grid(
  words.skyHead,
  skies.map(([spread, figures]) => [
    words.skyName(spread.sky),
    ...texts(words.skyRow(figures, spread)),
  ]),
  words.skiesTitle,
)}
<h3>${words.patternsTitle}</h3>
${grid(
  words.patternHead,
  skies.map(([{ sky }, figures]) => [words.skyName(sky), ...texts(words.patternRow(figures))]),
  words.patternsTitle,
)}
${bullets(words.notes)}
<h3>${words.curveTitle}</h3><p>${words.curveLead}</p>
${curveChart(facts, words)}
${year}
${words.doubts.length === 0 ? null : html`<h3>${words.doubtsTitle}</h3>${bullets(words.doubts)}`}
${facts.findings.length === 0 ? null : html`<h3>${words.findingsTitle}</h3>${bullets(facts.findings.map(words.finding))}`}
${
  words.defaults.length === 0
    ? null
    : html`<h3>${words.defaultsTitle}</h3><p>${words.defaultsNote}</p>${bullets(words.defaults)}`
}
<h3>${words.settingsTitle}</h3><p>${words.settings.join(', ')}</p>
${
  isCarried
    ? html`<p>${words.carries}</p><div class="clear"><h3>${words.clearTitle}</h3><p>${words.clearLead}</p>
<button type="button" id="play-clear">${play.clear}</button><div id="clear-result"></div></div>`
    : null
}
</details>
`
}

const WIDTH = 360
const LEFT = 34
const RIGHT = 12
const TOP = 8
const PLOT = 150

function curveChart({ curves }: PageFacts, words: EngineeringWords): Html {
  const last = Math.max(...curves.map(({ curve }) => curve.hours.at(-1) ?? 0))
  const x = (hour: number): number => LEFT + ((WIDTH - LEFT - RIGHT) * hour) / last
  const y = (share: number): number => TOP + PLOT * (1 - share)
  const hours = [0, 0.25, 0.5, 0.75, 1].map((part) => Math.round(part * last))
  return html`<svg class="chart" viewBox="0 0 ${WIDTH} ${TOP + PLOT + 24}" role="img" aria-labelledby="curve-alt"><title id="curve-alt">${words.curveAlt}</title>
${[0, 0.25, 0.5, 0.75, 1].map(
  (share) =>
    html`<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${y(share)}" y2="${y(share)}" stroke="${GRID}"/><text x="${LEFT - 4}" y="${y(share) + 4}" text-anchor="end" fill="${QUIET}">${100 * share}</text>`,
)}
${hours.map((hour) => html`<text x="${x(hour)}" y="${TOP + PLOT + 16}" text-anchor="${hour === last ? 'end' : 'middle'}" fill="${QUIET}">${hour} h</text>`)}
${curves.map(({ curve }, i) => html`<path d="${steps(curve, x, y)}" fill="none" ${stroke(i)}/>`)}
</svg>
<ul class="key">${curves.map(
    ({ sky }, i) =>
      html`<li><svg class="swatch" viewBox="0 0 18 12" aria-hidden="true"><line x1="0" x2="18" y1="6" y2="6" ${stroke(i)}/></svg> ${words.skyName(sky)}</li>`,
  )}</ul>`
}

/** A house with a weather file has one sky more than the figures have lines. */
const STROKES = [...LINES, { color: '#7d5a00', width: 2, dash: '10px,3px,2px,3px' }] as const

function stroke(i: number): Html {
  const { color, width, dash } = STROKES[Math.min(i, STROKES.length - 1)]!
  const dashes = dash === 'solid' ? null : html` stroke-dasharray="${dash.replaceAll('px', '')}"`
  return html`stroke="${color}" stroke-width="${Math.min(3, width)}"${dashes}`
}

function steps(
  { hours, share }: AutonomyCurve,
  x: (hour: number) => number,
  y: (share: number) => number,
): string {
  const points = Array.from(hours).flatMap((hour, i) =>
    Number.isNaN(share[i]) ? [] : [`${x(hour).toFixed(1)} ${y(share[i]!).toFixed(1)}`],
  )
  return `M${points.join('L')}`
}
