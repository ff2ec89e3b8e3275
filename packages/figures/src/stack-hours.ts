// Hours of each stack as one column: at worst the dark foot, to the middle case the light top.

import type { StacksAnswer } from '@tideover/core'
import type { Trace } from './figure.js'
import { type NestedPiece, nestedColumns, nestedPieces } from './nested-columns.js'
import type { KeyEntry } from './panels.js'
import { BAD, INK, levelLine, PARTS } from './style.js'
import { NUMBER_PX, overLine } from './top-numbers.js'

const CASES = [
  { of: 'worstHours', words: 'at worst', color: PARTS[0], ink: '#ffffff' },
  { of: 'p05Hours', words: '1 in 20', color: PARTS[2], ink: INK },
  { of: 'medianHours', words: 'middle case', color: PARTS[3], ink: INK },
] as const

export interface StackHours {
  readonly data: readonly Trace[]
  readonly shapes: readonly Record<string, unknown>[]
  readonly annotations: readonly Record<string, unknown>[]
  readonly key: readonly KeyEntry[]
  /** Upper end of the axis. [h] */
  readonly top: number
}

type Told = Pick<StacksAnswer, 'stacks' | 'cutHours' | 'horizonHours'>

/** @param above  room over the highest column, as a factor. @param heightPx  of the panel */
export function stackHours(answer: Told, above: number, heightPx: number): StackHours {
  const { stacks, cutHours } = answer
  const cases = CASES.filter(({ of }) => stacks.some((row) => row[of] !== null)).map((each) => ({
    ...each,
    ends: stacks.map((row) => row[each.of]),
    said: stacks.map((row) => (row[each.of] === null ? '–' : hoursSaid(row[each.of]!, answer))),
  }))
  const top = above * Math.max(cutHours, ...stacks.map(({ medianHours }) => medianHours))
  const nested = nestedPieces(cases)
  const pieces = stacks.map(({ modules }, i) =>
    cases.map(({ ink }, c) => ({ ...nested[c]![i]!, modules, ink })),
  )
  const pxAnHour = heightPx / top
  const panel = { yref: 'y', pxAUnit: pxAnHour, levels: [cutHours] }
  const x = stacks.map(({ modules }) => modules)
  const where = stacks.map(({ modules }) => `${modules} modules`)
  return {
    data: nestedColumns(x, cases, 'y', where, 'h'),
    shapes: levelLine(cutHours, 'y'),
    annotations: pieces.flatMap((row) => [
      ...row.slice(0, -1).flatMap((piece) => insideNumber(piece, row.at(-1)!, answer, pxAnHour)),
      number(row.at(-1)!, answer, overLine(row.at(-1)!.to, panel), 'bottom', INK),
    ]),
    key: [
      ...cases.map(({ words, color }) => ({ words, color })),
      { words: `the cut, ${cutHours}`, color: BAD, sign: '┅' },
    ],
    top,
  }
}

interface Piece extends NestedPiece {
  readonly modules: number
  readonly ink: string
}

/** What keeps a number clear of the line of the cut. [px] */
const CLEAR_PX = 10

/** In the piece where there is room; else over it, if there is room below the number on top. */
function insideNumber(
  piece: Piece,
  whole: Piece,
  answer: Told,
  pxAnHour: number,
): Record<string, unknown>[] {
  const { from, to, ink } = piece
  if ((to - from) * pxAnHour >= NUMBER_PX) {
    const half = NUMBER_PX / 2 / pxAnHour
    const isClear = (y: number): boolean => Math.abs(y - answer.cutHours) * pxAnHour >= CLEAR_PX
    const y = [(from + to) / 2, to - half, from + half].find(isClear) ?? (from + to) / 2
    return [number(piece, answer, y, 'middle', ink)]
  }
  const isFoot = from === 0
  if (!isFoot || (whole.to - to) * pxAnHour < NUMBER_PX) return []
  return [number(piece, answer, Math.max(to, whole.from), 'bottom', INK)]
}

function number(
  { modules, to }: Piece,
  answer: Told,
  y: number,
  yanchor: 'middle' | 'bottom',
  color: string,
): Record<string, unknown> {
  return {
    text: hoursSaid(to, answer),
    xref: 'x',
    yref: 'y',
    x: modules,
    y,
    yanchor,
    showarrow: false,
    font: { size: 12, color },
  }
}

/** `26`; `>72` where starts were followed no further. */
export function hoursSaid(hours: number, { horizonHours }: Pick<Told, 'horizonHours'>): string {
  return `${hours >= horizonHours ? '>' : ''}${Math.floor(hours)}`
}
