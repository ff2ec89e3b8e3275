// A line of the log of a cut: the sentence, and what it is about for whoever words it anew.

/** What a line tells. The sentence of the log has the numbers; those of a minute are in its trace. */
export const EVENT_IDS = [
  'cut-begins',
  'grid-back',
  'comfort-off',
  'comfort-on',
  'solar-in',
  'solar-trips',
  'solar-held-out',
  'solar-stays-in',
  'solar-still-trips',
  'battery-full',
  'too-much-at-once',
  'relay-drops',
  'tries-again',
  'somebody-wakes',
  'put-away',
  'generator-wanted',
  'tank-wants-filling',
  'generator-not-wanted',
  'generator-runs',
  'generator-stops',
  'generator-spared',
  'generator-stalls',
  'stalls-again',
  'tank-empty',
  'tank-filled',
  'generator-does-not-start',
  'generator-fails',
  'battery-empty',
  'holds-on',
  'goes-dark',
  'critical-back',
  'all-back',
  'thermostats',
  'sun-in-vain',
  'battery-flat',
  'too-cold-to-charge',
  'load-lost',
] as const
export type EventId = (typeof EVENT_IDS)[number]

/** One thing that happened, told. */
export interface Told {
  readonly id: EventId
  readonly text: string
  /** Loads or arrays that it concerns. */
  readonly names?: readonly string[]
  /** Minute of the trace in which somebody will have tended it; null where nobody is there. */
  readonly tendedAt?: number | null | undefined
}

export interface EventLine extends Told {
  /** Minute of the trace. */
  readonly minute: number
  /** `Tue 14 Jan 16:20` */
  readonly local: string
}

/** Takes a line of the log. */
export type Tell = (minute: number, told: Told) => void
