// A Green Button feed (NAESB REQ.21, ESPI) taken apart: what was measured, and its readings.
//
// A feed is a list of entries that name one another by links: a block of intervals belongs to a
// meter reading, and a meter reading to a reading type. Element names are compared in small
// letters, because feeds are seen that write `IntervalBLock`.

import { XMLParser, XMLValidator } from 'fast-xml-parser'
import type { Faults } from '../faults.js'

/** What a channel of the meter counts; codes as in ESPI, NaN where the feed names none. */
export interface ReadingType {
  /** 72 energy [Wh], 38 power [W]. */
  readonly unit: number
  /** 1 taken from the grid, 19 given to it, 4 the difference. */
  readonly flow: number
  /** Values are written in 10^power of the unit. */
  readonly power: number
  /** [s] */
  readonly intervalSeconds: number
  /** 4 energy of an interval; 1, 2, 3 and 9 reading of a register. */
  readonly accumulation: number
  readonly line: number
}

/** One interval: start in Unix seconds UTC, length in seconds, value as written. */
export interface Reading {
  readonly start: number
  readonly seconds: number
  readonly value: number
  readonly quality: number
  readonly line: number
}

/** What was measured, and the clock of the place where it was. */
export interface Feed {
  readonly channels: readonly Channel[]
  /** Offset of local time without summer time; undefined where the feed names none. [min], east positive */
  readonly localOffsetMinutes: number | undefined
}

/** A reading type with all its readings, in the order of the feed. */
export interface Channel {
  readonly type: ReadingType
  readonly readings: readonly Reading[]
}

type Node = { readonly [key: string]: unknown }

const LISTS = new Set(['entry', 'link', 'intervalblock', 'intervalreading', 'readingquality'])

/**
 * Reads the channels of a feed.
 *
 * @throws InputError where the text is no well-formed XML or a block's type can't be told
 */
export function readFeed(text: string, faults: Faults): Feed {
  const valid = XMLValidator.validate(text)
  if (valid !== true) faults.refuse(valid.err.line, 'well-formed XML', valid.err.msg)
  const parser = new XMLParser({
    removeNSPrefix: true,
    parseTagValue: false,
    ignoreAttributes: false,
    attributeNamePrefix: '@',
    processEntities: false,
    captureMetaData: true,
    transformTagName: (name) => name.toLowerCase(),
    isArray: (name) => LISTS.has(name),
  })
  const root = parser.parse(text) as Node
  const feed = child(root, 'feed') ?? root
  const feedEntries = list(feed, 'entry')
  const entries = feedEntries.length > 0 ? feedEntries : [feed]
  return {
    channels: channelsOf(entries, lineFinder(text), faults),
    localOffsetMinutes: localOffset(entries),
  }
}

/** `LocalTimeParameters/tzOffset`, in seconds. */
function localOffset(entries: readonly Node[]): number | undefined {
  for (const entry of entries) {
    const local = child(child(entry, 'content') ?? entry, 'localtimeparameters')
    const seconds = local === null ? Number.NaN : numberIn(local, 'tzoffset')
    if (Number.isFinite(seconds)) return seconds / 60
  }
  return undefined
}

function channelsOf(
  entries: readonly Node[],
  lineOf: (node: Node) => number,
  faults: Faults,
): Channel[] {
  const types = new Map<string, ReadingType>()
  const typeOfMeter = new Map<string, string>()
  for (const entry of entries) {
    const content = child(entry, 'content') ?? entry
    const type = child(content, 'readingtype')
    if (type !== null) types.set(hrefs(entry, 'self')[0] ?? '', readType(type, lineOf(type)))
  }
  for (const entry of entries) {
    const content = child(entry, 'content') ?? entry
    if (!('meterreading' in content)) continue
    const type = hrefs(entry, 'related').find((href) => types.has(href))
    if (type !== undefined) typeOfMeter.set(hrefs(entry, 'self')[0] ?? '', type)
  }
  const only = types.size === 1 ? [...types.keys()][0] : undefined
  const channels = new Map<string, { type: ReadingType; readings: Reading[] }>()
  for (const entry of entries) {
    const content = child(entry, 'content') ?? entry
    for (const block of list(content, 'intervalblock')) {
      const meters = [...hrefs(entry, 'up'), ...hrefs(entry, 'self')].map(meterOf)
      const key = only ?? meters.map((href) => typeOfMeter.get(href)).find((href) => href)
      const type = key === undefined ? undefined : types.get(key)
      if (key === undefined || type === undefined) {
        faults.add(lineOf(block), 'a block linked to a reading type', 'a block without one')
        continue
      }
      // Two meters may share one type: each meter is a channel of its own.
      const meter = meters[0] ?? ''
      const channel = channels.get(`${key} ${meter}`) ?? { type, readings: [] }
      channels.set(`${key} ${meter}`, channel)
      readBlock(block, type, lineOf, channel.readings)
    }
  }
  faults.throwIfAny()
  return [...channels.values()]
}

/** `…/MeterReading/01/IntervalBlock/177` belongs to `…/MeterReading/01`. */
function meterOf(href: string): string {
  return href.replace(/\/IntervalBlock.*$/i, '')
}

function readType(node: Node, line: number): ReadingType {
  return {
    unit: numberIn(node, 'uom'),
    flow: numberIn(node, 'flowdirection'),
    power: numberIn(node, 'poweroftenmultiplier', 0),
    intervalSeconds: numberIn(node, 'intervallength'),
    accumulation: numberIn(node, 'accumulationbehaviour'),
    line,
  }
}

function readBlock(
  block: Node,
  type: ReadingType,
  lineOf: (node: Node) => number,
  into: Reading[],
): void {
  const blockStart = numberIn(child(block, 'interval') ?? {}, 'start')
  list(block, 'intervalreading').forEach((reading, i) => {
    const period = child(reading, 'timeperiod') ?? {}
    into.push({
      start: numberIn(period, 'start', blockStart + i * type.intervalSeconds),
      seconds: numberIn(period, 'duration', type.intervalSeconds),
      value: numberIn(reading, 'value'),
      quality: numberIn(list(reading, 'readingquality')[0] ?? {}, 'quality'),
      line: lineOf(reading),
    })
  })
}

function child(node: Node, name: string): Node | null {
  const value = node[name]
  const one = Array.isArray(value) ? value[0] : value
  return typeof one === 'object' && one !== null ? (one as Node) : null
}

function list(node: Node, name: string): Node[] {
  const value = node[name]
  return Array.isArray(value) ? value.filter((each) => typeof each === 'object') : []
}

function hrefs(entry: Node, rel: string): string[] {
  return list(entry, 'link')
    .filter((link) => link['@rel'] === rel)
    .map((link) => String(link['@href'] ?? ''))
}

function numberIn(node: Node, name: string, otherwise = Number.NaN): number {
  const value = node[name]
  return typeof value === 'string' && value.trim() !== '' ? Number(value) : otherwise
}

/** Line of an element, found from its place in the text. */
function lineFinder(text: string): (node: Node) => number {
  const symbol = XMLParser.getMetaDataSymbol() as unknown as string
  const ends: number[] = []
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) ends.push(i)
  return (node) => {
    const place = (node[symbol] as { startIndex?: number } | undefined)?.startIndex ?? 0
    let low = 0
    let high = ends.length
    while (low < high) {
      const middle = (low + high) >> 1
      if ((ends[middle] ?? 0) < place) low = middle + 1
      else high = middle
    }
    return low + 1
  }
}
