// Shaded cells in rows and columns, and the words in them.

import type { Trace } from './figure.js'
import { type PartLook, partScale } from './part-look.js'
import { PARTS } from './style.js'

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
