// What a cut moves besides power, a panel each: the temperature of a fridge or a boiler, the water
// left in a sump, the fuel.

import { type Calendar, type Course, type CutStory, localTime, type Prepared } from '@tideover/core'
import { spans } from './clock-axis.js'
import { lossLine } from './cut-loss.js'
import { decimate } from './decimate.js'
import type { Trace } from './figure.js'
import { heading, type Panels } from './panels.js'
import { AREAS, BAD, BASE_AXIS, QUIET } from './style.js'
import { durationText } from './words.js'

type Shown = NonNullable<Course['shown']>
type Story = Pick<CutStory, 'courses' | 'trace'>

/** What a cut has moved: of a load that keeps something, or the fuel. */
interface KeptCourse {
  readonly name: string
  readonly lostAt: number | null
  readonly shown: Pick<Shown, 'word' | 'unit' | 'limit' | 'values'>
  /** Said beside its name. */
  readonly note: string
}

/** Smaller moves are not worth a panel: a tenth of a degree or of a litre. */
const LEAST_MOVE = 0.1

/** Critical loads that keep something, in the order of the file, and the fuel: what has moved. */
function keptCourses(story: Story, calendar?: Calendar): KeptCourse[] {
  const { courses, trace: t } = story
  const loads = courses.flatMap(({ name, lostAt, shown }): KeptCourse[] => {
    if (shown === null) return []
    const when =
      lostAt === null || calendar === undefined ? '' : localTime(calendar, t.from + lostAt)
    const note = when === '' ? '' : `, <span style="color:${BAD}"><b>lost ${when}</b></span>`
    return [{ name, lostAt, shown, note }]
  })
  return [...loads, fuelCourse(t)].filter(({ shown: { values } }) => {
    const [least, most] = ends(values)
    return most - least >= LEAST_MOVE
  })
}

function fuelCourse({ fuelL, generatorKw }: CutStory['trace']): KeptCourse {
  const ran = generatorKw.reduce((minutes, kw) => minutes + (kw > 0 ? 1 : 0), 0)
  const burnt = (fuelL[0] ?? 0) - (fuelL.at(-1) ?? 0)
  return {
    name: 'fuel, tank and cans',
    lostAt: null,
    shown: { word: 'left', unit: 'l', limit: 0, values: fuelL },
    note: `, ran ${durationText(ran)}, took ${(Math.ceil(10 * burnt) / 10).toFixed(1)}\u00a0l`,
  }
}

/** Number of the first axis of what loads keep. */
const FIRST_AXIS = 5

const nameOf = (k: number): string => `kept ${k}`

/** Gap and height of their panels. [px] */
export function keptRoom(story: Story): [string | null, number][] {
  return keptCourses(story).flatMap((_, k): [string | null, number][] => [
    [null, 32],
    [nameOf(k), 64],
  ])
}

export interface KeptPanels {
  /** plotly's names of their axes, from above: `y5`. */
  readonly names: readonly string[]
  /** By their names in a layout: `yaxis5`. */
  readonly axes: Readonly<Record<string, unknown>>
  readonly traces: readonly Trace[]
  readonly shapes: readonly Record<string, unknown>[]
  readonly annotations: readonly Record<string, unknown>[]
}

/** @param place  with the rows of `keptRoom` */
export function keptPanels(
  story: CutStory,
  { calendar }: Pick<Prepared, 'calendar'>,
  place: Panels,
): KeptPanels {
  const courses = keptCourses(story, calendar)
  const names = courses.map((_, k) => `y${FIRST_AXIS + k}`)
  const { from } = story.trace
  return {
    names,
    axes: Object.fromEntries(
      courses.map(({ shown }, k) => [
        `yaxis${FIRST_AXIS + k}`,
        { ...BASE_AXIS, domain: place.domain(nameOf(k)), range: rangeOf(shown), nticks: 4 },
      ]),
    ),
    traces: courses.map((course, k) => courseTrace(course, from, calendar, names[k]!)),
    shapes: courses.flatMap(({ shown: { limit }, lostAt }, k) => [
      level(limit, names[k]!),
      ...(lostAt === null ? [] : [lossLine([lostAt, lostAt], names[k]!)]),
    ]),
    annotations: courses.flatMap((course, k) => {
      const [, top] = place.domain(nameOf(k))
      const title = heading(top, course.name, course.shown.unit)
      return [{ ...title, text: `${title.text}${course.note}` }, limitNote(course.shown, names[k]!)]
    }),
  }
}

/** Values hold at the end of their minute. */
function courseTrace(
  { name, lostAt, shown }: KeptCourse,
  from: number,
  calendar: Calendar,
  yaxis: string,
): Trace {
  const matters = lostAt === null ? [] : [Math.max(0, lostAt - 1), lostAt]
  const rows = decimate(shown.values, undefined, matters)
  const digits = shown.unit === 'l' ? 0 : 1
  return {
    type: 'scatter',
    mode: 'lines',
    name: `${name}, ${shown.word}`,
    yaxis,
    x: Array.from(rows, (i) => (i + 1) / 60),
    y: Array.from(rows, (i) => Math.round(1000 * shown.values[i]!) / 1000),
    text: Array.from(rows, (i) => localTime(calendar, from + i + 1)),
    line: { color: AREAS.battery, width: 2.5, simplify: false },
    hovertemplate: `%{text}<br>${name} %{y:.${digits}f} ${shown.unit}<extra></extra>`,
  }
}

/** Room for the words over the limit, as a share of the panel. */
const ROOM = 0.3

function rangeOf({ values, limit }: KeptCourse['shown']): [number, number] {
  const [least, most] = ends(values)
  const [low, high] = [Math.min(least, limit), Math.max(most, limit)]
  const span = high - low
  return [low - 0.06 * span, Math.max(high + 0.06 * span, limit + (ROOM / (1 - ROOM)) * span)]
}

function ends(values: Float64Array): [number, number] {
  return values.reduce<[number, number]>(
    ([least, most], value) => [Math.min(least, value), Math.max(most, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  )
}

function level(limit: number, yref: string): Record<string, unknown> {
  return {
    type: 'line',
    xref: 'paper',
    yref,
    x0: 0,
    x1: 1,
    y0: limit,
    y1: limit,
    line: { color: BAD, width: 1.2, dash: 'dot' },
  }
}

/** Half the words of a limit on a phone, as a share of the panel. */
const HALF_WORDS = 0.17

/** In the middle of the longest time to one side of the limit, at the other side of its line. */
function limitNote(shown: KeptCourse['shown'], yaxis: string): Record<string, unknown> {
  const { values, limit, unit } = shown
  const n = values.length
  const isWater = unit === 'l'
  const isBeyond = (i: number): boolean => (isWater ? values[i]! <= limit : values[i]! > limit)
  const runs = [
    ...spans(n, (i) => !isBeyond(i)).map((span) => ({ span, yanchor: 'bottom' })),
    // Nothing is below no water.
    ...spans(n, isBeyond).map((span) => ({ span, yanchor: isWater ? 'bottom' : 'top' })),
  ]
  const length = ({ span: [from, to] }: (typeof runs)[number]): number => to - from
  const [longest] = runs.sort((one, other) => length(other) - length(one))
  const middle = longest === undefined ? 0.5 : (longest.span[0] + longest.span[1]) / 2 / n
  return {
    text: isWater ? 'nothing left' : `lost above ${limit} °C`,
    xref: 'paper',
    yref: yaxis,
    x: Math.min(1 - HALF_WORDS, Math.max(HALF_WORDS, middle)),
    y: limit,
    xanchor: 'center',
    yanchor: longest?.yanchor ?? 'bottom',
    showarrow: false,
    borderpad: 0,
    font: { size: 11, color: QUIET, shadow: 'auto' },
  }
}
