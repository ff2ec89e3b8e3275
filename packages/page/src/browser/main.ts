// What runs in the customer's browser: reads the form, simulates the cut again, shows it.
//
// Nothing is prepared until somebody asks for a cut: the year's sun and loads take a moment.

import { cutView } from '../cut/cut-view.js'
import { outcome } from '../cut/outcome.js'
import type { Carried, Packed } from '../replay/carried.js'
import { type Choice, Player } from '../replay/player.js'
import { cutWords } from '../words/cut.js'
import { playWords } from '../words/play.js'
import { regionOf } from '../words/region.js'

/** The cut last played, for whoever wants to compare it. */
interface Played {
  readonly storedKwh: readonly number[]
  readonly events: readonly { readonly minute: number; readonly text: string }[]
  readonly startMs: number
  readonly syntheticYear: number
  /** From the choice to the simulated cut. [ms] */
  readonly ms: number
}

const page = document
let player: Player | null = null

function element<T extends HTMLElement>(id: string): T {
  return page.getElementById(id) as T
}

async function unpacked(): Promise<Carried> {
  const { deflated } = JSON.parse(element('house-data').textContent ?? '') as Packed
  const bytes = Uint8Array.from(atob(deflated), (letter) => letter.charCodeAt(0))
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'))
  return JSON.parse(await new Response(stream).text()) as Carried
}

function chosen(): Choice {
  const number = (id: string): number => Number(element<HTMLSelectElement>(id).value)
  const boxes = [...page.querySelectorAll<HTMLInputElement>('#play-loads input')]
  return {
    month: number('play-month'),
    day: number('play-day'),
    hour: number('play-hour'),
    hours: number('play-hours'),
    sky: element<HTMLSelectElement>('play-sky').value as Choice['sky'],
    off: boxes.filter((box) => !box.checked).map((box) => box.value),
  }
}

function unseen(text: string): HTMLElement {
  const span = page.createElement('span')
  span.className = 'aside'
  span.textContent = ` ${text}`
  return span
}

/** Lets the browser paint before work that takes a moment. */
function painted(): Promise<void> {
  return new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)))
}

async function play(into: HTMLElement, id: string, choice: Choice): Promise<void> {
  const status = element('play-status')
  try {
    if (player === null || !player.isReady(choice)) {
      status.textContent = element('play-words').dataset.working ?? ''
      await painted()
    }
    player ??= new Player(await unpacked())
    const prepared = player.preparedFor(choice.off)
    const from = performance.now()
    const story = player.play(choice)
    const ms = performance.now() - from
    const region = regionOf(prepared.house.site.timezone)
    const view = cutView(prepared, story)
    const words = cutWords(region)
    into.innerHTML = outcome(view, words, id, false).markup
    status.textContent = playWords(region, choice.sky).under(view.from, choice.sky)
    // Read out with it; for the eye it stands right below.
    status.append(unseen(words.lasts(view)))
    const last: Played = {
      storedKwh: [...story.trace.storedKwh],
      events: story.events.map(({ minute, text }) => ({ minute, text })),
      startMs: prepared.calendar.startMs + story.trace.from * 60_000,
      syntheticYear: story.syntheticYear,
      ms,
    }
    Object.assign(globalThis, { tideover: { last } })
  } catch (error) {
    status.textContent = `${element('play-words').dataset.failed ?? ''} ${String(error)}`
  }
}

/** A month offers the days it has. */
function fitDays(): void {
  const month = Number(element<HTMLSelectElement>('play-month').value)
  const last = Number(element('play-form').dataset.days?.split(' ')[month - 1] ?? 31)
  const day = element<HTMLSelectElement>('play-day')
  for (const option of day.options) {
    option.disabled = Number(option.value) > last
    option.hidden = option.disabled
  }
  if (Number(day.value) > last) day.value = String(last)
}

const form = page.getElementById('play-form')
const replay = (): void => void play(element('play-result'), 'played', chosen())
form?.addEventListener('submit', (event) => {
  event.preventDefault()
  replay()
})
// Once a cut has been played, a changed choice is played at once.
form?.addEventListener('change', () => {
  fitDays()
  if (player !== null) replay()
})
page.getElementById('play-clear')?.addEventListener('click', () => {
  void play(element('clear-result'), 'clear', { ...chosen(), sky: 'clear' })
})

// Paper shows what is folded for the customer; the electrician's part is printed where it is open.
const folded = new Set<HTMLDetailsElement>()
addEventListener('beforeprint', () => {
  for (const each of page.querySelectorAll<HTMLDetailsElement>(
    'details:not([open], .engineering)',
  )) {
    folded.add(each)
    each.open = true
  }
})
addEventListener('afterprint', () => {
  for (const each of folded) each.open = false
  folded.clear()
})
if (form !== null) fitDays()
page.documentElement.classList.add('playing')
