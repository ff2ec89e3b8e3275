// The next step for another day: a module, more sun, a warmer place, a generator, less load, each
// ridden like the house as it stands.

import type { HouseFiles, Prepared } from '../../series/prepare.js'
import type { HourFigures } from '../hour-figures.js'
import type { RideQuestion } from '../ride-question.js'
import { equip } from '../scenario.js'
import { warningsFor } from '../warnings.js'
import type { Change, StepKind } from './change.js'
import { generatorChange } from './generator-change.js'
import { loadChanges } from './load-changes.js'
import { placeChange } from './place-change.js'
import { setChanges } from './set-changes.js'
import { CASES, type Case, gained, perHour, type RiddenStacks, stackFigures } from './stack-rows.js'
import { sunChanges } from './sun-changes.js'

/** What a step shall add. [h] */
export const ANOTHER = 24
/** A step that adds less is no step. [h] */
const LEAST_HOURS = 1

export interface NextStep {
  readonly kind: StepKind
  readonly what: string
  /** In the money of the house; 0 where nothing is bought, null where the house gives no price. */
  readonly price: number | null
  /** A critical load that is then no longer promised; null where all are. */
  readonly givesUp: string | null
  /** With the step. [h] */
  readonly worstHours: number | null
  readonly p05Hours: number
  readonly medianHours: number
  readonly share: number | null
  /** Over the stack it starts from; null where that outlasts the horizon. [h], share of 1 */
  readonly gained: Readonly<Record<Case | 'share', number | null>>
  /** Whether it gives another 24 hours; null where the horizon is too near to tell. */
  readonly anotherDay: { readonly worst: boolean | null; readonly median: boolean | null }
  /** Price of an hour in the case compared; null where not known or none is gained. */
  readonly pricePerHour: number | null
  readonly warnings: readonly string[]
}

export interface NextSteps {
  /** The stack they start from. */
  readonly from: number
  /** The case by whose hours they are sorted. */
  readonly comparedBy: Case
  /**
   * Most hours for the money first, then those without a price by hours, then what gives up a
   * critical load, then what adds under an hour.
   */
  readonly steps: readonly NextStep[]
  /** Loads tried, of which the one that gives most is told. */
  readonly loadsTried: number
}

/** @param tell  told each ride */
export function nextSteps(
  prepared: Prepared,
  changes: Changes,
  question: RideQuestion,
  stacks: RiddenStacks,
  tell: () => void,
): NextSteps {
  const from = question.modules ?? prepared.house.stack.modules
  const base = stacks.figures[from - 1]!
  const comparedBy = CASES.find((each) => (base[each] ?? Infinity) < base.horizonHours) ?? CASES[0]
  const known = new Set(warningsFor(prepared, stacks.equipped[from - 1]!))
  const ride = (change: Change): NextStep => {
    const changed = change.prepared()
    const equipped = equip(changed, question)
    const [figures] = stackFigures(changed, question, [equipped])
    const news = warningsFor(changed, equipped).filter((text) => !known.has(text))
    tell()
    return stepOf(
      { ...change, warnings: [...change.warnings, ...news] },
      figures!,
      base,
      comparedBy,
    )
  }
  const loads = changes.loads.map(ride)
  const steps = [
    ...moduleSteps(prepared, stacks, from, comparedBy),
    ...changes.others.map(ride),
    ...bestOf(loads, comparedBy),
  ]
  const sorted = steps.toSorted((a, b) => better(a, b, comparedBy))
  return { from, comparedBy, steps: sorted, loadsTried: loads.length }
}

/** The one that gives most; where it gives up a critical load, also the one that keeps them all. */
function bestOf(loads: readonly NextStep[], comparedBy: Case): NextStep[] {
  const sorted = loads.toSorted((a, b) => moreHours(a, b, comparedBy))
  return [
    ...new Set([
      ...sorted.slice(0, 1),
      ...sorted.filter(({ givesUp }) => givesUp === null).slice(0, 1),
    ]),
  ]
}

/** What is tried beside modules. */
export interface Changes {
  /** More sun, a warmer place, a generator or more of the one there is. */
  readonly others: readonly Change[]
  readonly loads: readonly Change[]
}

/** @param files  what `prepare` was given. @param month  1..12 */
export function changesOf(prepared: Prepared, files: HouseFiles, month: number): Changes {
  return {
    others: [
      ...sunChanges(prepared, files, month),
      ...placeChange(prepared),
      ...generatorChange(prepared, files),
      ...setChanges(prepared, files),
    ],
    loads: loadChanges(prepared, files, month),
  }
}

/** One module more; as many as give another day in the middle case, and in the worst. */
function moduleSteps(
  { house }: Prepared,
  { figures }: RiddenStacks,
  from: number,
  comparedBy: Case,
): NextStep[] {
  const base = figures[from - 1]!
  const { price } = house.stack.module
  const all = figures.slice(from).map((here, i) => {
    const more = i + 1
    const what = `${more === 1 ? 'one module' : `${more} modules`} more, ${from + more} in all`
    const cost = price === undefined ? null : more * price
    return stepOf(
      { kind: 'module', what, price: cost, givesUp: null, warnings: [] },
      here,
      base,
      comparedBy,
    )
  })
  return all.filter(
    (step, i) =>
      i === 0 ||
      step === all.find(({ anotherDay }) => anotherDay.median === true) ||
      step === all.find(({ anotherDay }) => anotherDay.worst === true),
  )
}

type Told = Omit<Change, 'prepared'>

function stepOf(change: Told, here: HourFigures, base: HourFigures, comparedBy: Case): NextStep {
  const { kind, what, price, givesUp, warnings } = change
  const { worstHours, p05Hours, medianHours, share } = here
  const hours = Object.fromEntries(CASES.map((each) => [each, gained(here, base, each)]))
  const gain = hours as Record<Case, number | null>
  return {
    ...{ kind, what, price, givesUp, worstHours, p05Hours, medianHours, share },
    gained: {
      ...gain,
      share: share === null || base.share === null ? null : share - base.share,
    },
    anotherDay: {
      worst: givesDay(here, gain.worstHours, 'worstHours'),
      median: givesDay(here, gain.medianHours, 'medianHours'),
    },
    pricePerHour: perHour(price, gain[comparedBy]),
    warnings,
  }
}

function givesDay(here: HourFigures, hours: number | null, which: Case): boolean | null {
  if (hours === null) return null
  if (hours >= ANOTHER) return true
  return (here[which] ?? 0) >= here.horizonHours ? null : false
}

/** Whether a step adds what is worth a line of advice. */
export function counts({ gained: gain }: NextStep, comparedBy: Case): boolean {
  return (gain[comparedBy] ?? 0) >= LEAST_HOURS
}

function better(a: NextStep, b: NextStep, comparedBy: Case): number {
  const rank = (step: NextStep): number =>
    !counts(step, comparedBy) ? 3 : step.givesUp !== null ? 2 : step.pricePerHour === null ? 1 : 0
  if (rank(a) !== rank(b)) return rank(a) - rank(b)
  if (rank(a) === 0 && a.pricePerHour !== b.pricePerHour) return a.pricePerHour! - b.pricePerHour!
  return moreHours(a, b, comparedBy)
}

/** By the case compared, then by the others, then by the share. */
export function moreHours(a: NextStep, b: NextStep, comparedBy: Case): number {
  for (const each of [comparedBy, ...CASES, 'share'] as const) {
    const apart = (b.gained[each] ?? 0) - (a.gained[each] ?? 0)
    if (apart !== 0) return apart
  }
  return 0
}
