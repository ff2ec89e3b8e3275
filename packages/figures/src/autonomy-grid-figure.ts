// Autonomy curves of many months or stacks, one a row: the share still on after so many hours.

import { type NamedCurve, shareAt } from './autonomy-rows.js'
import type { Figure } from './figure.js'
import { gridMarks, gridText } from './grid-marks.js'
import { header } from './header.js'
import { heading } from './panels.js'
import { type PartLook, partKey, partLook } from './part-look.js'
import { axisTitle, BASE_AXIS, BASE_LAYOUT, INK } from './style.js'
import { percentDown, shortened } from './words.js'

export interface AutonomyGridOptions {
  readonly title?: string
  /** Under what the curves hold. */
  readonly conditions?: string
  /** Where to tell the share. [h] */
  readonly hours?: readonly number[]
}

const TITLE = 'Autonomy: still on after so many hours'
const HOURS = [3, 6, 9, 12, 18, 24, 36, 48]
const ROW_PX = 21
const KEY_PX = 40
const MARGIN = { r: 14, b: 54 }
/** Room for the longest name; longer ones are shortened, the table has them whole. */
const NAMES = { letterPx: 7.2, besidePx: 16, leastPx: 42, mostLetters: 17 }

interface Cell extends PartLook {
  readonly text: string
  readonly hours: number
}

/**
 * A row for each curve, a column for each length of cut: what a dozen curves in one panel could
 * not show. Hours that no curve tells are left out; its numbers are those of `autonomyRows`.
 */
export function autonomyGridFigure(
  curves: readonly NamedCurve[],
  options: AutonomyGridOptions = {},
): Figure {
  const { title = TITLE, conditions = '' } = options
  const hours = (options.hours ?? HOURS).filter((h) =>
    curves.some(({ curve }) => curve.hours.includes(h)),
  )
  const rows = curves.map((named) => hours.map((h) => cellOf(named, h)))
  const head = header(title, conditions)
  const topPx = head.topPx + KEY_PX
  const edges = Array.from({ length: hours.length + 1 }, (_, i) => i)
  const names = curves.map(({ name }) => shortened(name, NAMES.mostLetters))
  const longest = Math.max(0, ...names.map((name) => name.length))
  const leftPx = Math.max(NAMES.leastPx, NAMES.besidePx + NAMES.letterPx * longest)
  const key = { ...heading(1, 'Still on', '% of cuts', partKey(100)), xshift: 8 - leftPx }
  return {
    data: [
      gridMarks('still on', edges, rows, (row, { text, hours: h }) => {
        return `${curves[row]!.name}, after ${h} h: ${text} %`
      }),
      gridText(edges, rows),
    ],
    layout: {
      ...BASE_LAYOUT,
      title: head.title,
      height: topPx + ROW_PX * curves.length + MARGIN.b,
      margin: { ...MARGIN, l: leftPx, t: topPx },
      xaxis: {
        ...BASE_AXIS,
        title: axisTitle('time since the power cut began [h]'),
        range: [0, hours.length],
        tickvals: hours.map((_, i) => i + 0.5),
        ticktext: hours.map(String),
        tickangle: 0,
        showgrid: false,
      },
      yaxis: {
        ...BASE_AXIS,
        range: [curves.length + 0.5, 0.5],
        tickvals: curves.map((_, i) => i + 1),
        ticktext: names,
        tickfont: { size: 12, color: INK },
        showgrid: false,
      },
      annotations: [{ ...key, yshift: 2 }],
    },
  }
}

function cellOf({ curve }: NamedCurve, hours: number): Cell {
  const share = shareAt(curve, hours)
  const percent = percentDown(share)
  return { ...partLook(share), hours, text: percent === null ? '–' : String(percent) }
}
