// What an answer hangs on: one thing at a time, at both ends of its range.

import type { HourFigures } from '../hour-figures.js'
import type { Pattern } from '../patterns.js'

/** What is told of a promise, and of it with one thing changed. */
export interface DoubtFigures {
  /** Share of starts that last the whole cut: the least of the patterns. */
  readonly share: number | null
  readonly hardest: Pattern
  readonly medianHours: number
  /** One start in 20 lasts no longer. [h] */
  readonly p05Hours: number
  /** How far starts were followed; a figure of so many hours is a lower bound. [h] */
  readonly horizonHours: number
}

/** One end of a range, or a place in it. */
export interface DoubtEnd {
  /** In words: `full`, `no sun`. */
  readonly at: string
  readonly figures: DoubtFigures
}

export interface Doubt {
  /** The same word for the same doubt, for scripts. */
  readonly id: string
  readonly name: string
  /** In words, with its unit. */
  readonly range: string
  readonly basis: string
  readonly ends: readonly DoubtEnd[]
  /** Most less least share, the promise's among them; 0..1. */
  readonly swingShare: number
  /** The same of the middle hours; a lower bound where a ride outlasts what was followed. [h] */
  readonly swingHours: number
}

/** A doubt before its swing is known. */
export type OpenDoubt = Omit<Doubt, 'swingShare' | 'swingHours'>

export const CP = 'common practice, no source'

export function doubtFigures(figures: HourFigures): DoubtFigures {
  const { share, hardest, medianHours, p05Hours, horizonHours } = figures
  return { share, hardest, medianHours, p05Hours, horizonHours }
}

/** What moves the answer most first: by its share, then by its hours. */
export function bySwing(promise: DoubtFigures, doubts: readonly OpenDoubt[]): Doubt[] {
  return doubts
    .map((doubt): Doubt => {
      const all = [promise, ...doubt.ends.map(({ figures }) => figures)]
      const seen = Math.min(...all.map(({ horizonHours }) => horizonHours))
      return {
        ...doubt,
        swingShare: spread(all.flatMap(({ share }) => share ?? [])),
        swingHours: spread(all.map(({ medianHours }) => Math.min(seen, medianHours))),
      }
    })
    .sort((a, b) => b.swingShare - a.swingShare || b.swingHours - a.swingHours)
}

function spread(values: readonly number[]): number {
  return values.length === 0 ? 0 : Math.max(...values) - Math.min(...values)
}
