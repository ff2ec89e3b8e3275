// The words inside a figure of autonomy curves: the name of each, and the shares at one length.

import { type NamedCurve, shareAt } from './autonomy-rows.js'
import { type Frame, lineIn, placeLabels, type Words } from './place-labels.js'
import { INK, LINES } from './style.js'
import { percentDown } from './words.js'

const SIZE_PX = 12

/**
 * Annotations for plotly.
 *
 * @param frame    of the curves, its axes in [h] and [%]
 * @param atHours  length of cut at which the shares are written out, or null. [h]
 */
export function autonomyLabels(
  curves: readonly NamedCurve[],
  frame: Frame,
  atHours: number | null,
): Record<string, unknown>[] {
  const lines = curves.map(({ curve }) =>
    lineIn(
      frame,
      curve.hours,
      curve.share.map((share) => 100 * share),
    ),
  )
  const names = curves.map(
    ({ name }, which): Words => ({
      text: `<b>${name}</b>`,
      color: colorOf(which),
      sizePx: SIZE_PX,
      near: lines[which]!,
      clearOf: lines.filter((_, other) => other !== which),
    }),
  )
  if (atHours === null) return placeLabels(frame, names)
  const upright = lineIn(frame, [atHours, atHours], [0, frame.yMost])
  const shares: Words = {
    text: sharesText(curves, atHours),
    color: INK,
    sizePx: SIZE_PX,
    near: upright,
    clearOf: lines,
  }
  const clear = names.map((words) => ({ ...words, clearOf: [...words.clearOf, upright] }))
  return placeLabels(frame, [shares, ...clear])
}

/** `58 % dull sky`, a row for each curve. */
function sharesText(curves: readonly NamedCurve[], hours: number): string {
  const rows = curves.map(({ name, curve }, which) => {
    const percent = percentDown(shareAt(curve, hours))
    const value = percent === null ? '–' : `${percent} %`
    return `<span style="color:${colorOf(which)}"><b>${value}</b> ${name}</span>`
  })
  return [`cuts of ${hours} h it lasts:`, ...rows].join('<br>')
}

function colorOf(which: number): string {
  return LINES[which % LINES.length]!.color
}
