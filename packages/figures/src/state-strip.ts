// The states of an island as one strip of bars along the time axis.

import type { Trace as CutTrace, StateName } from '@tideover/core'
import { spans } from './clock-axis.js'
import type { Trace } from './figure.js'
import { PHONE_PX } from './place-labels.js'
import { AREAS, INK } from './style.js'

interface StateLook {
  /** What the strip says, the longest first; the first that fits is taken. */
  readonly words: readonly string[]
  readonly fill: string
  readonly text: string
}

const OFF = { fill: '#111111', text: '#ffffff' }
const ONLY = ['must stay<br>on only', 'must<br>stay on<br>only']

const LOOKS: Readonly<Record<StateName, StateLook>> = {
  grid: { words: ['grid'], fill: '#ffffff', text: INK },
  island: { words: ['all on', 'all<br>on'], fill: '#dcebe2', text: INK },
  'island, comfort in part': {
    words: ['comfort in part', 'in part'],
    fill: '#c3d5ca',
    text: INK,
  },
  'island, critical only': { words: ONLY, fill: '#a9bfb4', text: INK },
  'island, generator': {
    words: ['generator', 'gene-<br>rator'],
    fill: AREAS.generator,
    text: '#ffffff',
  },
  'loads off, holding': { words: ['OFF'], ...OFF },
  'off, empty': { words: ['OFF'], ...OFF },
  'off, overload': { words: ['OFF:<br>overload', 'OFF'], ...OFF },
}

const SIZE_PX = 11.5

export interface StateSpan {
  readonly state: StateName
  /** What the figure calls it. */
  readonly words: string
  /** Minutes of the trace, [from, to). */
  readonly from: number
  readonly to: number
}

/** Runs of one state, in order. */
export function stateSpans({ states, n }: Pick<CutTrace, 'states' | 'n'>): StateSpan[] {
  const found: StateSpan[] = []
  for (let from = 0, i = 1; i <= n; i++) {
    if (i < n && states[i] === states[from]) continue
    const state = states[from]!
    const [words = ''] = LOOKS[state].words
    found.push({ state, words: words.replaceAll('<br>', ' '), from, to: i })
    from = i
  }
  return found
}

/** Runs of minutes in which the island served nothing, whatever the reason: [from, to). */
export function offSpans({ states, n }: Pick<CutTrace, 'states' | 'n'>): [number, number][] {
  return spans(n, (i) => isOff(states[i]!))
}

function isOff(state: StateName): boolean {
  return state === 'loads off, holding' || state.startsWith('off')
}

/** @param n  minutes that the axis shows */
export function stateStrip(found: readonly StateSpan[], n: number, yaxis: string): Trace {
  const looks = found.map(({ state }) => LOOKS[state])
  return {
    type: 'bar',
    name: 'state',
    orientation: 'h',
    yaxis,
    y: found.map(() => 0),
    base: found.map(({ from }) => from / 60),
    x: found.map(({ from, to }) => (to - from) / 60),
    width: 1,
    text: found.map((span) => fitting(span, n)),
    textposition: 'inside',
    insidetextanchor: 'middle',
    constraintext: 'none',
    textangle: 0,
    textfont: { color: looks.map(({ text }) => text), size: SIZE_PX },
    marker: {
      color: looks.map(({ fill }) => fill),
      line: { color: '#ffffff', width: 0.5 },
    },
    hoverinfo: 'skip',
  }
}

/** The longest of a state's words that fits into its span on a phone; none where none does. */
function fitting({ state, from, to }: StateSpan, n: number): string {
  const widthPx = ((to - from) / n) * PHONE_PX
  const fits = (words: string): boolean =>
    words.split('<br>').every((row) => (row.length + 0.5) * SIZE_PX * 0.56 <= widthPx)
  return LOOKS[state].words.find(fits) ?? ''
}
