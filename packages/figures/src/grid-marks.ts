// Shaded cells in rows and columns, and the words in them.

import type { Trace } from './figure.js'
import { type PartLook, partScale } from './part-look.js'
import { axisTitle, BASE_AXIS, INK, PARTS } from './style.js'

/** @param edges  of the columns on the x axis. @param hover  row from 0, and the cell */
export function gridMarks<Cell extends PartLook>(
  name: string,
  edges: readonly number[],
  rows: readonly (readonly Cell[])[],
  hover: (row: number, cell: Cell) => string,
): Trace {
  return {
    type: 'heatmap',
    name,
    x: edges,
    y: Array.from({ length: rows.length + 1 }, (_, i) => i + 0.5),
    z: rows.map((cells) => cells.map(({ step }) => step)),
    zmin: -0.5,
    zmax: PARTS.length - 0.5,
    colorscale: partScale(),
    showscale: false,
    xgap: 1,
    ygap: 1,
    text: rows.map((cells, row) => cells.map((cell) => hover(row, cell))),
    hoverinfo: 'text',
  }
}

/** The text of each cell in its middle, as dark or light as the cell needs. */
export function gridText(
  edges: readonly number[],
  rows: readonly (readonly (PartLook & { readonly text: string })[])[],
): Trace {
  const all = rows.flatMap((cells, row) =>
    cells.map((cell, i) => ({ cell, x: (edges[i]! + edges[i + 1]!) / 2, y: row + 1 })),
  )
  return {
    type: 'scatter',
    mode: 'text',
    x: all.map(({ x }) => x),
    y: all.map(({ y }) => y),
    text: all.map(({ cell }) => cell.text),
    textfont: { size: 12, color: all.map(({ cell }) => cell.ink) },
    hoverinfo: 'skip',
  }
}

/** Pixels of a row. */
export const GRID_ROW_PX = 21

/** Axes of a grid: what is counted across, and a name for each row from above. */
export function gridAxes(
  across: {
    readonly title: string
    readonly end: number
    /** Where a text stands, and the text. */
    readonly ticks: readonly (readonly [number, string])[]
  },
  names: readonly string[],
): { readonly xaxis: Record<string, unknown>; readonly yaxis: Record<string, unknown> } {
  return {
    xaxis: {
      ...BASE_AXIS,
      title: axisTitle(across.title),
      range: [0, across.end],
      tickvals: across.ticks.map(([at]) => at),
      ticktext: across.ticks.map(([, text]) => text),
      tickangle: 0,
      showgrid: false,
    },
    yaxis: {
      ...BASE_AXIS,
      range: [names.length + 0.5, 0.5],
      tickvals: names.map((_, i) => i + 1),
      ticktext: names,
      tickfont: { size: 12, color: INK },
      showgrid: false,
    },
  }
}
