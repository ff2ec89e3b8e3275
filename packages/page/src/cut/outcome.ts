// What a played cut comes to: how long, what gives out first, the chart, the log.

import { type Html, html } from '../html/html.js'
import type { CutWords } from '../words/cut.js'
import { chart } from './chart.js'
import type { CutView } from './cut-view.js'
import { toldHourByHour } from './story.js'

/** @param open  whether the log stands open */
export function outcome(view: CutView, words: CutWords, id: string, open: boolean): Html {
  return html`<p class="lasts">${words.lasts(view)}</p>
${chart(view, words, id)}
${view.loads.length === 0 ? null : loadList(view, words)}
<details${open ? html` open` : null}><summary>${words.hourByHour}</summary>
${toldHourByHour(view, words)}</details>`
}

function loadList({ loads }: CutView, words: CutWords): Html {
  return html`<ul class="fates">${loads.map(
    (load) => html`<li><strong>${load.name}</strong>: ${words.fate(load)}</li>`,
  )}</ul>`
}
