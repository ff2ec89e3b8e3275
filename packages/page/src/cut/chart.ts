// Charge over the course of a cut, with the night shaded and what was on as a strip below it.
//
// Drawn for the width of a phone and enlarged from there. Off is hatched, so that it is seen in
// grey print and by people who see few colours.

import { AREAS, BAD, GRID, INK, NIGHT, QUIET } from '@tideover/figures'
import { type Html, html } from '../html/html.js'
import { type CutWords, MOOD_ORDER } from '../words/cut.js'
import type { CutView, Mood } from './cut-view.js'

const WIDTH = 360
const LEFT = 34
const RIGHT = 8
const TOP = 18
const PLOT = 140
const STRIP_TOP = TOP + PLOT + 22
const STRIP = 18
const HEIGHT = STRIP_TOP + STRIP + 6

const FILLS: Readonly<Record<Exclude<Mood, 'off'>, string>> = {
  all: AREAS.comfort,
  part: AREAS.intoBattery,
  must: AREAS.battery,
  generator: AREAS.generator,
}

/** @param id  of the chart on its page: its title is named by it */
export function chart(view: CutView, words: CutWords, id: string): Html {
  const x = (minute: number): number =>
    round(LEFT + ((WIDTH - LEFT - RIGHT) * minute) / view.minutes)
  const y = (share: number): number => round(TOP + PLOT * (1 - Math.min(1, Math.max(0, share))))
  return html`<svg class="chart" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-labelledby="${id}-title">
<title id="${id}-title">${words.chartTitle(view)}</title>
<defs>${hatch(id)}</defs>
${view.nights.map(
  ({ from, to }) =>
    html`<rect x="${x(from)}" y="${TOP}" width="${round(x(to) - x(from))}" height="${PLOT}" fill="${NIGHT}"/>`,
)}
${[0, 0.25, 0.5, 0.75, 1].map(
  (
    share,
  ) => html`<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${y(share)}" y2="${y(share)}" stroke="${GRID}"/>
<text x="${LEFT - 4}" y="${y(share) + 4}" text-anchor="end" fill="${QUIET}">${Math.round(100 * share)}</text>`,
)}
<text x="${LEFT - 4}" y="11" text-anchor="end" fill="${QUIET}">%</text>
<text x="${LEFT}" y="11" fill="${INK}">${words.chargeOfBattery}</text>
${ticks(view).map(
  ({
    minute,
    text,
  }) => html`<line x1="${x(minute)}" x2="${x(minute)}" y1="${TOP + PLOT}" y2="${TOP + PLOT + 4}" stroke="${QUIET}"/>
<text x="${x(minute)}" y="${TOP + PLOT + 16}" text-anchor="middle" fill="${QUIET}">${text}</text>`,
)}
<path d="${line(view, x, y)}" fill="none" stroke="${AREAS.battery}" stroke-width="2.5" stroke-linejoin="round"/>
${lossMark(view, x, words)}
${view.moods.map(
  ({ from, to, what }) =>
    html`<rect x="${x(from)}" y="${STRIP_TOP}" width="${round(x(to) - x(from))}" height="${STRIP}" fill="${fillOf(what, id)}"/>`,
)}
<rect x="${LEFT}" y="${STRIP_TOP}" width="${WIDTH - LEFT - RIGHT}" height="${STRIP}" fill="none" stroke="${QUIET}"/>
</svg>
<ul class="key">${MOOD_ORDER.filter((mood) => view.moods.some(({ what }) => what === mood)).map(
    (mood) => html`<li>${swatch(mood, id)} ${words.moods[mood]}</li>`,
  )}<li>${nightSwatch()} ${words.night}</li></ul>`
}

function hatch(id: string): Html {
  return html`<pattern id="${id}-off" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="#ffffff"/><rect width="3" height="6" fill="${BAD}"/></pattern>`
}

function fillOf(mood: Mood, id: string): string {
  return mood === 'off' ? `url(#${id}-off)` : FILLS[mood]
}

function swatch(mood: Mood, id: string): Html {
  const fill = fillOf(mood, id)
  return html`<svg class="swatch" viewBox="0 0 18 12" aria-hidden="true"><rect x="0.5" y="0.5" width="17" height="11" fill="${fill}" stroke="${QUIET}"/></svg>`
}

function nightSwatch(): Html {
  return html`<svg class="swatch" viewBox="0 0 18 12" aria-hidden="true"><rect x="0.5" y="0.5" width="17" height="11" fill="${NIGHT}" stroke="${QUIET}"/></svg>`
}

function lossMark({ first }: CutView, x: (minute: number) => number, words: CutWords): Html | null {
  if (first === null) return null
  const at = x(first.lostAt as number)
  const isLate = at > WIDTH * 0.6
  return html`<line x1="${at}" x2="${at}" y1="${TOP}" y2="${STRIP_TOP + STRIP}" stroke="${BAD}" stroke-width="1.5" stroke-dasharray="4 2"/>
<text x="${isLate ? at - 4 : at + 4}" y="${TOP + 12}" text-anchor="${isLate ? 'end' : 'start'}" fill="${BAD}">${shortened(words.isLost(first.name))}</text>`
}

function shortened(text: string): string {
  const letters = [...text]
  return letters.length > 30 ? `${letters.slice(0, 29).join('')}…` : text
}

/** At most seven of the full hours, at round distances. */
function ticks({ clock, minutes }: CutView): CutView['clock'] {
  const every = [1, 2, 3, 4, 6, 12, 24, 48, 168].find((h) => minutes / 60 / h <= 6) ?? 336
  return clock.filter(({ text, minute }) => {
    const hour = Number(text.slice(0, 2))
    return (
      hour % Math.min(every, 24) === 0 && inside(minute, minutes) && whole(clock, minute, every)
    )
  })
}

/** Ends of the axis have no room for a text of their own. */
function inside(minute: number, minutes: number): boolean {
  return minute >= minutes * 0.03 && minute <= minutes * 0.96
}

/** Of marks at midnight, every second day and so on. */
function whole(clock: CutView['clock'], minute: number, every: number): boolean {
  if (every <= 24) return true
  const midnights = clock.filter(({ text }) => text === '00:00')
  return midnights.findIndex((mark) => mark.minute === minute) % (every / 24) === 0
}

/** One point for each step of the width, at least every ten minutes. */
function line(
  { charge, minutes }: CutView,
  x: (minute: number) => number,
  y: (share: number) => number,
): string {
  const step = Math.max(1, Math.floor(minutes / 400))
  const points: string[] = []
  for (let i = 0; i <= minutes; i += step) points.push(`${x(i)} ${y(charge[i]!)}`)
  if (minutes % step !== 0) points.push(`${x(minutes)} ${y(charge[minutes]!)}`)
  return `M${points.join('L')}`
}

function round(value: number): number {
  return Math.round(value * 10) / 10
}
