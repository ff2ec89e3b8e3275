// One change of a house that may make it last longer.

import type { Prepared } from '../../series/prepare.js'

export type StepKind =
  | 'module'
  | 'array'
  | 'tilt'
  | 'place'
  | 'generator'
  | 'fuel'
  | 'person'
  | 'start'
  | 'load'

export interface Change {
  readonly kind: StepKind
  readonly what: string
  /** In the money of the house; null where it gives none. */
  readonly price: number | null
  /** A critical load that is then no longer promised; null where all are. */
  readonly givesUp: string | null
  /** What has to be known of it, in sentences. */
  readonly warnings: readonly string[]
  /** The house with the change, made ready. */
  prepared(): Prepared
}

/** `8.8`, `3` */
export function short(value: number): string {
  return String(Number(value.toFixed(1)))
}
