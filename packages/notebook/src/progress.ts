// How far a long run is, live in the output of its cell.

import { newDisplay } from 'tslab'
import { escapeHtml } from './html.js'

/** A browser need not draw more often. [ms] */
const LEAST_BETWEEN_MS = 100

export interface Progress {
  /** How much is done, and of how much; null where nobody knows. */
  readonly tell: (done: number, of: number | null) => void
  /** Takes the line away. */
  readonly end: () => void
}

/**
 * A line that follows a long run and is gone when it ends. It moves while the cell awaits
 * something: work that never awaits shows it only when it is over.
 *
 * @param what  is being done, in a few words
 */
export function progress(what: string): Progress {
  const place = newDisplay()
  let shownMs = Number.NEGATIVE_INFINITY
  const tell = (done: number, of: number | null): void => {
    const nowMs = performance.now()
    if (nowMs - shownMs < LEAST_BETWEEN_MS && done !== of) return
    shownMs = nowMs
    place.html(progressHtml(what, done, of))
  }
  place.html(progressHtml(what, 0, null))
  return { tell, end: () => place.html('<span></span>') }
}

export function progressHtml(what: string, done: number, of: number | null): string {
  const label = escapeHtml(what)
  const bar = of === null ? '<progress' : `<progress value="${done}" max="${of}"`
  const count = of === null ? (done === 0 ? '' : `: ${done} parts done`) : `: ${done} of ${of}`
  return `<p>${bar} aria-label="${label}"></progress> ${label}${count}</p>`
}
