// The stored energy of a cut and the limits that it meets.

import { type Calendar, type CutStory, localTime } from '@tideover/core'
import { decimate } from './decimate.js'
import type { Trace } from './figure.js'
import { type Frame, type Line, lineIn, placeLabels } from './place-labels.js'
import { AREAS, BAD, QUIET } from './style.js'

/** What was stored at the start of the kept rows and at the end of all. */
export function storedTraces(story: CutStory, rows: Int32Array, calendar: Calendar): Trace[] {
  const { trace: t, capacityKwh } = story
  const { x, y } = storedPoints(story, rows)
  const clock = [...Array.from(rows, (i) => localTime(calendar, t.from + i))]
  clock.push(localTime(calendar, t.from + t.n))
  return [
    ...limitsOf(story).map(({ kwh, color }) => {
      const [hours, drawn] = [evenHours(kwh.length, t.n / 60), decimate(kwh)]
      return {
        type: 'scatter',
        mode: 'lines',
        x: Array.from(drawn, (i) => hours[i]!),
        y: Array.from(drawn, (i) => rounded(kwh[i]!)),
        line: { color, width: 1.2, dash: 'dot' },
        hoverinfo: 'skip',
      }
    }),
    {
      type: 'scatter',
      mode: 'lines',
      name: 'stored energy',
      x,
      y: y.map(rounded),
      line: { color: AREAS.battery, width: 2.5, simplify: false },
      fill: 'tozeroy',
      fillcolor: 'rgba(31,79,130,0.16)',
      text: clock,
      customdata: y.map((kwh) => Math.round((100 * kwh) / capacityKwh)),
      hovertemplate: '%{text}<br>%{y:.2f} kWh, %{customdata} %<extra></extra>',
    },
  ]
}

function storedPoints({ trace: t }: CutStory, rows: Int32Array): { x: number[]; y: number[] } {
  return {
    x: [...Array.from(rows, (i) => i / 60), t.n / 60],
    y: [...Array.from(rows, (i) => t.startStoredKwh[i]!), t.storedKwh[t.n - 1]!],
  }
}

interface Limit {
  /** At even steps through the cut. [kWh] */
  readonly kwh: readonly number[]
  readonly color: string
  readonly words: string
}

/** The cold lifts the lowest of them, hour by hour. */
function limitsOf({ capacityKwh, compiled, trace: t }: CutStory): Limit[] {
  const { rules, columns } = compiled
  const percent = (kwh: number): number => Math.round((100 * kwh) / capacityKwh)
  const full = [capacityKwh, capacityKwh]
  const limits: Limit[] = [
    { kwh: full, color: QUIET, words: `full: ${capacityKwh.toFixed(1)} kWh` },
  ]
  // One label, at the first step: several lie too close for one each.
  for (const [step, { dropBelowKwh: kwh }] of rules.shed.entries()) {
    const then = rules.shed.length === 1 ? 'must stay on only' : 'comfort goes in steps'
    const words = step === 0 ? `below ${percent(kwh)} %: ${then}` : ''
    limits.push({ kwh: [kwh, kwh], color: QUIET, words })
  }
  const last = t.n - 1
  const steps = Math.max(1, Math.floor(last / 60))
  const kwh = Array.from(
    { length: steps + 1 },
    (_, i) => rules.loadsOffKwh + columns.coldFloor[Math.floor((i * last) / steps)]!,
  )
  const most = percent(Math.max(...kwh))
  const warm = percent(rules.loadsOffKwh)
  const words = `below ${most} %${most > warm ? ` (${warm} % when warm)` : ''}: off`
  limits.push({ kwh, color: BAD, words })
  return limits
}

/**
 * What the limits mean, written where the line leaves room.
 *
 * @param off  the first span without power, in minutes of the trace
 */
export function limitNotes(
  story: CutStory,
  rows: Int32Array,
  frame: Frame,
  off: readonly [number, number] | undefined,
): Record<string, unknown>[] {
  const { x, y } = storedPoints(story, rows)
  const stored = lineIn(frame, x, y)
  const limits = limitsOf(story).map(({ kwh, words }) => ({
    line: lineIn(frame, evenHours(kwh.length, frame.xMost), kwh),
    words,
  }))
  const upright = (minute: number): Line =>
    lineIn(frame, [minute / 60, minute / 60], [0, frame.yMost])
  const others = [stored, ...(off === undefined ? [] : [upright(off[0])])]
  return placeLabels(
    frame,
    limits
      .filter(({ words }) => words !== '')
      .map(({ line, words }) => ({
        text: words,
        color: QUIET,
        sizePx: 11,
        near: line,
        clearOf: [...others, ...limits.flatMap((other) => (other.line === line ? [] : other.line))],
      })),
  )
}

function evenHours(count: number, last: number): number[] {
  return Array.from({ length: count }, (_, i) => (i / Math.max(1, count - 1)) * last)
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000
}
