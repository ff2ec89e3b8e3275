// An axis of months, a place for each.

import { monthName } from '@tideover/core'
import { axisTitle, BASE_AXIS, INK } from './style.js'

/** @param months  1..12, in their order. @param anchor  plotly's name of the lowest y axis */
export function monthAxis(
  months: readonly number[],
  anchor: string,
  title: string,
): Record<string, unknown> {
  return {
    ...BASE_AXIS,
    title: axisTitle(title),
    range: [0.4, months.length + 0.6],
    tickvals: months.map((_, i) => i + 1),
    ticktext: months.map((month) => monthName(month).slice(0, 3)),
    // Twelve larger ones would touch on a phone.
    tickfont: { size: 11, color: INK },
    tickangle: 0,
    anchor,
    showgrid: false,
  }
}
