// Where words go inside a panel: beside their own line, clear of all others.
//
// Worked out for the width of a phone; on wider paper there is only more room.

/** A line through points in pixels from the upper left corner of the panel. NaN breaks it. */
export interface Line {
  readonly x: readonly number[]
  readonly y: readonly number[]
}

/** A panel whose axes begin at 0. */
export interface Frame {
  readonly widthPx: number
  readonly heightPx: number
  /** Right and upper end of the axes, in their units. */
  readonly xMost: number
  readonly yMost: number
  /** plotly's name of the axis upwards. */
  readonly yaxis: string
}

interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Words, the line they belong to and those that they must not touch. */
export interface Words {
  /** Rows separated by `<br>`. */
  readonly text: string
  readonly color: string
  readonly sizePx: number
  readonly near: Line
  readonly clearOf: readonly Line[]
  /** Says itself what it belongs to: it rather stands far off than over a line. Default false */
  readonly isKey?: boolean
}

/** How finely places are tried, across and down. [px] */
const STEPS_PX = [6, 2] as const
/** Least room to the own line, and to anything else. [px] */
const OWN_PX = 2
const OTHER_PX = 5
/** Room to others beyond which more of it is no better. [px] */
const ENOUGH_PX = 24
/** What a pixel away from the own line costs, in pixels of room to others; that of a key less. */
const AWAY = { name: 3, key: 0.1 }
/** What it costs to touch a line, and to touch other words, in pixels of room. */
const TOUCHED = { line: 60, words: 300 }

/** Between the margins of a phone. [px] */
export const PHONE_PX = 318

/** A line of an axis's units in the pixels of a frame. */
export function lineIn(frame: Frame, x: ArrayLike<number>, y: ArrayLike<number>): Line {
  return {
    x: Array.from(x, (value) => (value / frame.xMost) * frame.widthPx),
    y: Array.from(y, (value) => (1 - value / frame.yMost) * frame.heightPx),
  }
}

/**
 * Annotations for plotly, placed one after the other: each near its line with as much room around
 * it as can be had, and touching something only where everything nearer does too.
 */
export function placeLabels(frame: Frame, labels: readonly Words[]): Record<string, unknown>[] {
  const placed: Box[] = []
  return labels.map((words) => {
    const box = bestBox(frame, words, placed)
    placed.push(box)
    return {
      text: words.text,
      xref: 'x',
      yref: frame.yaxis,
      x: (box.x / frame.widthPx) * frame.xMost,
      y: (1 - box.y / frame.heightPx) * frame.yMost,
      xanchor: 'left',
      yanchor: 'top',
      align: 'left',
      showarrow: false,
      borderpad: 0,
      font: { size: words.sizePx, color: words.color, shadow: 'auto' },
    }
  })
}

function bestBox(frame: Frame, words: Words, placed: readonly Box[]): Box {
  const { width, height } = sizeOf(words)
  const away = words.isKey ? AWAY.key : AWAY.name
  let best = { box: { x: 0, y: 0, width, height }, score: Number.NEGATIVE_INFINITY }
  for (let x = 0; x + width <= frame.widthPx; x += STEPS_PX[0]) {
    for (let y = 0; y + height <= frame.heightPx; y += STEPS_PX[1]) {
      const box = { x, y, width, height }
      const own = distance(box, words.near)
      if (ENOUGH_PX - away * own <= best.score) continue
      const onIt = own < OWN_PX ? TOUCHED.line : 0
      const score = roomOf(box, words, placed) - onIt - away * own
      if (score > best.score) best = { box, score }
    }
  }
  return best.box
}

/** Room to everything else, less what touching costs. [px] */
function roomOf(box: Box, words: Words, placed: readonly Box[]): number {
  let room = ENOUGH_PX
  let touched = 0
  for (const line of words.clearOf) {
    const gap = distance(box, line)
    if (gap < OTHER_PX) touched += TOUCHED.line
    room = Math.min(room, gap)
  }
  for (const one of placed) {
    const gap = apart(box, one)
    if (gap < OTHER_PX) touched += TOUCHED.words
    room = Math.min(room, gap)
  }
  return room - touched
}

/** A letter is about half as wide as its size, a bold one a little more. */
function sizeOf({ text, sizePx }: Words): { width: number; height: number } {
  const rows = text.split('<br>').map((row) => ({
    letters: row.replaceAll(/<[^>]*>/g, '').length,
    share: row.startsWith('<b>') ? 0.58 : 0.52,
  }))
  const width = Math.max(...rows.map(({ letters, share }) => letters * share)) * sizePx
  return { width, height: rows.length * sizePx * 1.35 }
}

/** Least distance from a box to the pieces of a line. [px] */
function distance(box: Box, { x, y }: Line): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 1; i < x.length; i++) {
    const [left, right] = [Math.min(x[i - 1]!, x[i]!), Math.max(x[i - 1]!, x[i]!)]
    const [upper, lower] = [Math.min(y[i - 1]!, y[i]!), Math.max(y[i - 1]!, y[i]!)]
    const gap = apart(box, { x: left, y: upper, width: right - left, height: lower - upper })
    if (gap < least) least = gap
  }
  return least
}

function apart(a: Box, b: Box): number {
  const across = Math.max(b.x - (a.x + a.width), a.x - (b.x + b.width), 0)
  const down = Math.max(b.y - (a.y + a.height), a.y - (b.y + b.height), 0)
  return Math.hypot(across, down)
}
