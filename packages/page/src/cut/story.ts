// A cut told hour by hour: what happened, and what the quiet hours in between were like.

import { type Html, html } from '../html/html.js'
import type { CutWords } from '../words/cut.js'
import type { SeenEvent } from '../words/events.js'
import type { CutView, Mood } from './cut-view.js'

interface Chapter {
  from: number
  to: number
  readonly events: SeenEvent[]
}

export function toldHourByHour(view: CutView, words: CutWords): Html {
  return html`<ol class="hours">${chapters(view).map(
    (chapter) =>
      html`<li><p class="when"><strong>${span(view, chapter)}</strong> <span>${words.goes(
        view.charge[chapter.from]!,
        view.charge[chapter.to]!,
        moodsIn(view, chapter),
      )}</span></p>${
        chapter.events.length === 0
          ? null
          : html`<ul>${chapter.events.map(
              (event) => html`<li><time>${event.local.slice(-5)}</time> ${words.event(event)}</li>`,
            )}</ul>`
      }</li>`,
  )}</ol>`
}

/** Hours with events one by one, quiet ones together. */
function chapters({ minutes, clock, events }: CutView): Chapter[] {
  const edges = [0, ...clock.map(({ minute }) => minute), minutes].filter(
    (minute, i, all) => minute !== all[i - 1],
  )
  const told: Chapter[] = []
  for (let e = 0; e + 1 < edges.length; e++) {
    const [from, to] = [edges[e]!, edges[e + 1]!]
    const within = events.filter(({ minute }) => minute >= from && minute < to)
    const before = told.at(-1)
    if (before !== undefined && before.events.length === 0 && within.length === 0) before.to = to
    else told.push({ from, to, events: within })
  }
  return told
}

function moodsIn({ moods }: CutView, { from, to }: Chapter): Mood[] {
  const inside = moods.filter((span) => span.from < to && span.to > from).map(({ what }) => what)
  return [...new Set(inside)]
}

/** `Tue 14 Jan 18:00 – 19:00`; the day is said where it is another at the end. */
function span(view: CutView, { from, to }: Chapter): string {
  const [a, b] = [view.localAt(from), view.localAt(to)]
  const sameDay = a.slice(0, -6) === b.slice(0, -6)
  return `${a} – ${sameDay ? b.slice(-5) : b}`
}
