// Stacked areas of power over the kept rows.

import type { PowerArea } from './cut-powers.js'
import type { Trace } from './figure.js'
import { AREAS, BAD, QUIET, SHONE } from './style.js'

/** @param yaxis  the axis that they share, also the name of their stack */
export function stackedTraces(
  areas: readonly PowerArea[],
  rows: Int32Array,
  yaxis: string,
): Trace[] {
  return areas.map(({ words, color, hatch, kw }) => ({
    ...stepTrace(words, kw, rows, yaxis),
    // The lightest would be lost on a shaded night.
    line: { width: color === AREAS.losses ? 0.6 : 0, color: QUIET, shape: 'hv', simplify: false },
    stackgroup: yaxis,
    fillcolor: color,
    ...(hatch === '' ? {} : { fillpattern: patternOf(hatch, color) }),
  }))
}

/** What must stay on and got nothing, hatched. */
export function missingTrace(kw: Float64Array, rows: Int32Array, yaxis: string): Trace {
  return {
    ...stepTrace('no power for what must stay on', kw, rows, yaxis),
    fill: 'tozeroy',
    fillcolor: BAD,
    fillpattern: { shape: 'x', fgcolor: BAD, bgcolor: '#ffffff', size: 6, solidity: 0.35 },
  }
}

/** What the arrays could have given, as a line over what was taken; none at night. */
export function shoneTrace(kw: Float64Array, rows: Int32Array, yaxis: string): Trace {
  const byDay = kw.map((value) => (value > 0 ? value : Number.NaN))
  const trace = stepTrace('sun to be had', byDay, rows, yaxis)
  return {
    ...trace,
    line: { ...(trace.line as object), width: 1.2, color: SHONE, dash: '3px,2px' },
  }
}

/** Held through each minute; the last value to the end of it. */
function stepTrace(name: string, kw: Float64Array, rows: Int32Array, yaxis: string): Trace {
  const y = Array.from(rows, (i) => Math.round(kw[i]! * 1000) / 1000)
  return {
    type: 'scatter',
    mode: 'lines',
    name,
    yaxis,
    x: [...Array.from(rows, (i) => i / 60), kw.length / 60],
    y: [...y, y.at(-1) ?? 0],
    line: { width: 0, shape: 'hv', simplify: false },
    hovertemplate: `${name} %{y:.2f} kW<extra></extra>`,
  }
}

function patternOf(shape: '/' | '.', color: string): Record<string, unknown> {
  return { shape, fgcolor: 'rgba(255,255,255,0.55)', bgcolor: color, size: 6, solidity: 0.25 }
}
