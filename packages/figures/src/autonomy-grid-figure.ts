// Autonomy curves of many months or stacks, one a row: the share still on after so many hours.

import { type NamedCurve, shareAt } from './autonomy-rows.js'
import type { Figure } from './figure.js'
import { GRID_ROW_PX, gridAxes, gridMarks, gridText } from './grid-marks.js'
import { header, sheet } from './header.js'
import { heading } from './panels.js'
import { type PartLook, partKey, partLook } from './part-look.js'
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
  const edges = Array.from({ length: hours.length + 1 }, (_, i) => i)
  const names = curves.map(({ name }) => shortened(name, NAMES.mostLetters))
  const leftPx = widthOf(names)
  const key = { ...heading(1, 'Still on', '% of cuts', partKey(100)), xshift: 8 - leftPx }
  return {
    data: [
      gridMarks('still on', edges, rows, (row, { text, hours: h }) => {
        return `${curves[row]!.name}, after ${h} h: ${text} %`
      }),
      gridText(edges, rows),
    ],
    layout: {
      ...sheet(head, GRID_ROW_PX * curves.length, { ...MARGIN, l: leftPx }, KEY_PX),
      ...gridAxes(
        {
          title: 'time since the power cut began [h]',
          end: hours.length,
          ticks: hours.map((h, i): [number, string] => [i + 0.5, String(h)]),
        },
        names,
      ),
      annotations: [{ ...key, yshift: 2 }],
    },
  }
}

/** Room for names beside the rows. [px] */
function widthOf(names: readonly string[]): number {
  const longest = Math.max(0, ...names.map((name) => name.length))
  return Math.max(NAMES.leastPx, NAMES.besidePx + NAMES.letterPx * longest)
}

function cellOf({ curve }: NamedCurve, hours: number): Cell {
  const share = shareAt(curve, hours)
  const percent = percentDown(share)
  return { ...partLook(share), hours, text: percent === null ? '–' : String(percent) }
}
