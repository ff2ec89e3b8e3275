// The form with which a cut is played again; the script fills in what comes out.

import { monthName } from '@tideover/core'
import type { PageFacts } from '../facts.js'
import { type Html, html } from '../html/html.js'
import { PLAYED_SKIES } from '../replay/carried.js'
import { lengthText } from '../words/numbers.js'
import type { PlayWords } from '../words/play.js'
import { section } from './parts.js'

export function playSection(facts: PageFacts, words: PlayWords, isCarried: boolean): Html {
  const body = isCarried ? form(facts, words) : html`<p>${words.tooLarge}</p>`
  return section('play', words.title, body)
}

function form(facts: PageFacts, words: PlayWords): Html {
  const { answer, equipped, carried, prepared } = facts
  const { house } = equipped
  const first = facts.hardestStart ?? { day: 14, hour: 18 }
  const lengthOf = (m: number): number =>
    prepared.calendar.days.filter(({ month }) => month === m).length
  const months = Array.from({ length: 12 }, (_, m) => [m + 1, monthName(m + 1)] as const)
  const days = Array.from({ length: 31 }, (_, d) => [d + 1, String(d + 1)] as const)
  const hours = Array.from(
    { length: 24 },
    (_, h) => [h, `${String(h).padStart(2, '0')}:00`] as const,
  )
  const lengths = carried.lengths.map((h) => [h, lengthText(h)] as const)
  const skies = PLAYED_SKIES.map((sky) => [sky, words.skyText(sky)] as const)
  const island = house.loads.filter(({ tier }) => tier !== 'gridOnly')
  const lead = facts.hardestStart === null ? words.lead : `${words.lead} ${words.hardestFirst}`
  return html`<p>${lead}</p>
<noscript><p><strong>${words.needsScript}</strong></p></noscript>
<form id="play-form" data-days="${months.map(([m]) => lengthOf(m)).join(' ')}">
<div class="fields">
${select('play-month', words.month, months, answer.month)}
${select('play-day', words.day, days, first.day)}
${select('play-hour', words.hour, hours, first.hour)}
${select('play-hours', words.length, lengths, answer.cutHours)}
${select('play-sky', words.sky, skies, answer.promise, 'whole')}
</div>
<fieldset id="play-loads"><legend>${words.loads}</legend>
${island.map(
  ({ name, tier }) =>
    html`<label><input type="checkbox" value="${name}" checked> <span>${name} <small>(${tier === 'critical' ? words.mustStayOn : words.whileItLasts})</small></span></label>`,
)}
</fieldset>
<button type="submit">${words.play}</button>
</form>
<p id="play-status" role="status"></p>
<div id="play-result"></div>
<span id="play-words" hidden data-working="${words.working}" data-failed="${words.failed}"></span>`
}

function select(
  id: string,
  label: string,
  options: readonly (readonly [string | number, string])[],
  chosen: string | number,
  kind = 'part',
): Html {
  return html`<label for="${id}" class="${kind}">${label}<select id="${id}" autocomplete="off">${options.map(
    ([value, text]) =>
      html`<option value="${value}"${value === chosen ? html` selected` : null}>${text}</option>`,
  )}</select></label>`
}
