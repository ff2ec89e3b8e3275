// Where the words and the bar of each doubt stand, one below the other.

import type { Doubt } from '@tideover/core'
import { amountOf, type By, type DoubtsDrawn, UNITS, valueText } from './doubts-rows.js'
import { QUIET } from './style.js'

/** Of a row. [px] */
const LINE_PX = 16
export const BAR_PX = 14
const GAP_PX = 16
/** Over the first row, for what is promised. [px] */
export const TOP_PX = 20
/** Letters of a line of ends that fit a phone. */
const LETTERS = 54

export interface DoubtRow {
  readonly doubt: Doubt
  /** Of its ends, in per cent or hours; those not known left out. */
  readonly values: readonly number[]
  readonly lines: readonly string[]
  readonly fromPx: number
  /** Middle of its bar. */
  readonly barPx: number
  readonly toPx: number
}

export function rowsOf({ doubts }: DoubtsDrawn, by: By): DoubtRow[] {
  const swing = (doubt: Doubt): number => (by === 'share' ? doubt.swingShare : doubt.swingHours)
  let fromPx = TOP_PX
  return [...doubts]
    .sort((a, b) => swing(b) - swing(a))
    .map((doubt) => {
      const values = doubt.ends.map(({ figures }) => amountOf(figures, by))
      const lines = brokenLines(doubt, by)
      const barPx = fromPx + LINE_PX * lines.length + 2 + BAR_PX / 2
      const row = { doubt, values: values.filter(Number.isFinite), lines, fromPx, barPx }
      fromPx = barPx + BAR_PX / 2 + GAP_PX
      return { ...row, toPx: fromPx }
    })
}

/** Name and ends one after the other, a line broken between two of them. */
function brokenLines({ name, ends }: Doubt, by: By): string[] {
  const lines = [`<b>${name}</b>:`]
  let letters = name.length + 1
  for (const [i, { at, figures }] of ends.entries()) {
    const value = `${valueText(figures, by)}\u00a0${UNITS[by]}${i === ends.length - 1 ? '' : ','}`
    const more = at.length + value.length + 2
    const end = `<span style="color:${QUIET}">${at}</span> ${value}`
    if (letters + more > LETTERS) {
      lines.push(end)
      letters = more
    } else {
      lines.push(`${lines.pop()} ${end}`)
      letters += more
    }
  }
  return lines
}
