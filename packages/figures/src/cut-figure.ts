// One cut as a figure: the states, the stored energy, where power comes from and where it goes.

import { type CutStory, Event, localTime, type Prepared, skyWords } from '@tideover/core'
import { clockAxis, nightShape, nights } from './clock-axis.js'
import { missingTrace, shoneTrace, stackedTraces } from './cut-areas.js'
import { lossLine, lossNote, withoutNote } from './cut-loss.js'
import { type CutPowers, cutPowers } from './cut-powers.js'
import { limitNotes, storedTraces } from './cut-stored.js'
import type { Figure, Trace } from './figure.js'
import { type Header, header, sheet } from './header.js'
import { keepRows } from './keep-rows.js'
import { keptPanels, keptRoom } from './kept-panels.js'
import { heading, type Panels, panels } from './panels.js'
import { type Frame, PHONE_PX } from './place-labels.js'
import { offSpans, stateSpans, stateStrip } from './state-strip.js'
import { BASE_AXIS, SHONE } from './style.js'
import { durationText } from './words.js'

const DEFAULTS = { mostRows: 2500 }

export interface CutFigureOptions {
  /** About how many minutes are drawn of a long cut; those that matter always are. Default 2500 */
  readonly mostRows?: number
}

/** From above; gaps hold the headings. [px] */
const STORED_PX = 150
const PANELS = [
  ['strip', 42],
  [null, 46],
  ['stored', STORED_PX],
  [null, 48],
  ['sources', 110],
  [null, 48],
  ['uses', 130],
] as const
/** Axes of the stored energy and of powers, from above. */
const POWERS = ['y', 'y2', 'y3']
/** Room above the stored energy for when it goes off. [px] */
const LOSS_NOTE_PX = 17
const MARGIN = { l: 42, r: 22, b: 62 }

/** Room above a full battery for the words that say so. */
const ABOVE_FULL = 1.16

/** Happenings whose minute is drawn whatever its values: what repeats all day is not among them. */
const MATTERS = ~(Event.solarTrips | Event.solarIn)

/**
 * The cut of a story against local time; nights are shaded, the first minute off is marked. What
 * critical loads keep cold, hot or dry has a panel where the cut moves it.
 *
 * @param prepared  the house that the story was traced with
 */
export function cutFigure(
  story: CutStory,
  prepared: Prepared,
  options: CutFigureOptions = {},
): Figure {
  const { mostRows } = { ...DEFAULTS, ...options }
  const { calendar } = prepared
  const { trace: t } = story
  const powers = cutPowers(t)
  const rows = rowsToDraw(story, powers, mostRows)
  const place = panels([...PANELS, ...keptRoom(story)])
  const kept = keptPanels(story, prepared, place)
  const head = headerOf(story, prepared)
  return {
    data: [
      stateStrip(stateSpans(t), t.n, 'y4'),
      ...storedTraces(story, rows, calendar),
      ...powerTraces(powers, rows),
      ...kept.traces,
    ],
    layout: {
      ...sheet(head, place.heightPx, MARGIN),
      hovermode: 'x',
      bargap: 0,
      xaxis: { ...clockAxis(calendar, t.from, t.n), anchor: kept.names.at(-1) ?? 'y3' },
      ...yAxes(story, place, powers),
      ...kept.axes,
      shapes: [...nightsAndLoss(story, prepared, kept.names), ...kept.shapes],
      annotations: [
        ...headings(place, powers),
        ...notes(story, prepared, rows),
        ...kept.annotations,
      ],
    },
  }
}

function rowsToDraw(
  story: CutStory,
  { sources, uses, missing, shone }: CutPowers,
  mostRows: number,
): Int32Array {
  const steps = [...sources, ...uses].map(({ kw }) => kw)
  if (missing !== null) steps.push(missing)
  if (shone !== null) steps.push(shone)
  const lines = [story.trace.startStoredKwh]
  return keepRows({ steps, lines }, mostRows, rowsThatMatter(story))
}

/** On a phone a night of more days would be two pixels wide. */
const MOST_NIGHTS = 60

function showsNights({ n }: CutStory['trace']): boolean {
  return n <= MOST_NIGHTS * 1440
}

/** @param names  axes that have the night too, and lines of their own */
function nightsAndLoss(
  { trace: t }: CutStory,
  prepared: Prepared,
  names: readonly string[],
): Record<string, unknown>[] {
  const dark = showsNights(t) ? nights(prepared, t.from, t.n) : []
  const [first] = offSpans(t)
  const upright = first === undefined ? [] : POWERS.map((yaxis) => lossLine(first, yaxis))
  return [
    ...[...POWERS, ...names].flatMap((yaxis) => dark.map((night) => nightShape(night, yaxis))),
    ...upright,
  ]
}

function notes(
  story: CutStory,
  { calendar }: Prepared,
  rows: Int32Array,
): Record<string, unknown>[] {
  const { trace: t } = story
  const off = offSpans(t)
  const [first] = off
  return [
    ...limitNotes(story, rows, storedFrame(story), first),
    ...(first === undefined ? [] : [lossNote(first, t, calendar, 'y')]),
    ...withoutNote(off, t.n, 'y3'),
  ]
}

function powerTraces({ sources, uses, shone, missing }: CutPowers, rows: Int32Array): Trace[] {
  return [
    ...stackedTraces(sources, rows, 'y2'),
    ...(shone === null ? [] : [shoneTrace(shone, rows, 'y2')]),
    ...stackedTraces(uses, rows, 'y3'),
    ...(missing === null ? [] : [missingTrace(missing, rows, 'y3')]),
  ]
}

/** Minutes that are drawn whatever their values: every change of state, every happening. */
function rowsThatMatter({ trace: t }: CutStory): number[] {
  const rows = stateSpans(t).flatMap(({ from, to }) => [from, to - 1])
  for (let i = 0; i < t.n; i++) if ((t.events[i]! & MATTERS) !== 0) rows.push(i)
  return rows
}

function storedFrame({ trace: t, capacityKwh }: CutStory): Frame {
  return {
    widthPx: PHONE_PX,
    heightPx: STORED_PX,
    xMost: t.n / 60,
    yMost: ABOVE_FULL * capacityKwh,
    yaxis: 'y',
  }
}

function yAxes(story: CutStory, place: Panels, { mostKw }: CutPowers): Record<string, unknown> {
  const power = { ...BASE_AXIS, range: [0, 1.05 * mostKw], nticks: 4 }
  return {
    yaxis: {
      ...BASE_AXIS,
      domain: place.domain('stored'),
      range: [0, storedFrame(story).yMost],
      nticks: 5,
    },
    yaxis2: { ...power, domain: place.domain('sources') },
    yaxis3: { ...power, domain: place.domain('uses') },
    yaxis4: { domain: place.domain('strip'), range: [-0.5, 0.5], visible: false, fixedrange: true },
  }
}

function headings(place: Panels, { sources, uses, shone }: CutPowers): Record<string, unknown>[] {
  const top = (name: string): number => place.domain(name)[1]
  const had = shone === null ? [] : [{ words: 'sun to be had', color: SHONE, sign: '┅' }]
  return [
    { ...heading(top('stored'), 'Stored energy', 'kWh'), yshift: LOSS_NOTE_PX },
    heading(top('sources'), 'Where power comes from', 'kW', [...sources, ...had]),
    heading(top('uses'), 'Where it goes', 'kW', uses),
  ]
}

function headerOf(story: CutStory, { house, calendar }: Prepared): Header {
  const { trace: t, capacityKwh, cutMinutes, cuts } = story
  const more = cuts.length === 1 ? '' : `, and ${cuts.length - 1} more`
  const start = localTime(calendar, t.from).replaceAll(' ', '\u00a0')
  const { month } = calendar.days[calendar.dayOf[t.from]!]!
  const charge = Math.round((100 * t.startStoredKwh[0]!) / capacityKwh)
  return header(
    `${house.house}: cut of ${durationText(cutMinutes)} from ${start}${more}`,
    `${skyWords(story.sky, story.spell, month)}, synthetic year ${story.syntheticYear}; ` +
      `battery ${capacityKwh.toFixed(1)} kWh, ${charge} % full at the start.${showsNights(t) ? ' Shaded:\u00a0night.' : ''}`,
  )
}
