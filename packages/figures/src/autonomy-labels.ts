// The words inside a figure of autonomy curves: the name of each, and the shares at one length.

import { type NamedCurve, shareAt } from './autonomy-rows.js'
import { type Frame, lineIn, placeLabels, type Words } from './place-labels.js'
import { INK, type LineLook } from './style.js'
import { percentDown } from './words.js'

const SIZE_PX = 12

/**
 * Annotations for plotly.
 *
 * @param frame    of the curves, its axes in [h] and [%]
 * @param atHours  length of cut at which the shares are written out, or null. [h]
 * @param looks    of the curves
 */
export function autonomyLabels(
  curves: readonly NamedCurve[],
  frame: Frame,
  atHours: number | null,
  looks: readonly LineLook[],
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
      color: looks[which]!.color,
      sizePx: SIZE_PX,
      near: lines[which]!,
      clearOf: lines.filter((_, other) => other !== which),
    }),
  )
  if (atHours === null) return placeLabels(frame, names)
  const upright = lineIn(frame, [atHours, atHours], [0, frame.yMost])
  const shares: Words = {
    text: sharesText(curves, atHours, looks),
    color: INK,
    sizePx: SIZE_PX,
    near: upright,
    clearOf: lines,
    isKey: true,
  }
  const clear = names.map((words) => ({ ...words, clearOf: [...words.clearOf, upright] }))
  return placeLabels(frame, [shares, ...clear])
}

/** `58 % dull sky`, a row for each curve. */
function sharesText(
  curves: readonly NamedCurve[],
  hours: number,
  looks: readonly LineLook[],
): string {
  const rows = curves.map(({ name, curve }, which) => {
    const percent = percentDown(shareAt(curve, hours))
    const value = percent === null ? '–' : `${percent} %`
    return `<span style="color:${looks[which]!.color}"><b>${value}</b> ${name}</span>`
  })
  return [`cuts of ${hours} h`, 'it lasts:', ...rows].join('<br>')
}
