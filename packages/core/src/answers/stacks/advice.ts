// Which step to take and why, in plain sentences.

import { monthName } from '../../axis/calendar.js'
import type { SkyKind } from '../../sky/sky.js'
import { skyName } from '../words.js'
import type { FreeStep } from './free-step.js'
import { ANOTHER, counts, moreHours, type NextStep, type NextSteps } from './next-steps.js'
import { CASES, type Case, type StackRow } from './stack-rows.js'

const IN_CASE: Readonly<Record<Case, string>> = {
  medianHours: 'in the middle case',
  p05Hours: 'in all but 1 cut in 20',
  worstHours: 'at worst',
}

export interface Around {
  readonly month: number
  readonly sky: SkyKind
  readonly horizonHours: number
  /** 0..1; null without one. */
  readonly shareTarget: number | null
  readonly free: FreeStep | null
}

/** What gives up a critical load is never advised, only told. */
export function adviceOn(next: NextSteps, rows: readonly StackRow[], around: Around): string[] {
  const { steps, comparedBy, from } = next
  const base = rows[from - 1]!
  const kept = steps.filter(({ givesUp }) => givesUp === null)
  return [
    ...alreadyLasts(base),
    ...toTheTarget(kept, base, rows, around),
    ...withFreeStep(rows, around),
    ...take(kept, comparedBy, base, around),
    ...withNobodyWoken(kept, comparedBy, around),
    ...anotherDay(kept, 'median', 'in the middle case', around),
    ...anotherDay(kept, 'worst', 'at worst', around),
    ...(from < rows.length
      ? []
      : [`The base takes no more than ${modules(from)} (stack.modulesMax): none can be added.`]),
    ...sunSays(steps, around),
    ...steps
      .filter((step) => step.givesUp !== null && counts(step, comparedBy))
      .map(
        (step) =>
          `Only if the customer can do without ${step.givesUp}: ${step.what}: ` +
          `${gainWords(step, comparedBy, around)}.`,
      ),
  ]
}

function alreadyLasts({ share, modules: count }: StackRow): string[] {
  if (share !== 1) return []
  return [`${modules(count)} last to the end of every such cut: no step is needed for it.`]
}

/** The cheapest step with which the share reaches its target. */
function toTheTarget(
  steps: readonly NextStep[],
  { share }: StackRow,
  rows: readonly StackRow[],
  { shareTarget }: Around,
): string[] {
  if (shareTarget === null || share === null || share >= shareTarget) return []
  const enough = steps.filter((step) => (step.share ?? 0) >= shareTarget)
  const target = `The ${Number((100 * shareTarget).toFixed(1))} in 100 asked for`
  const smallest = rows.find(({ met }) => met === true)
  if (enough.length === 0) {
    const stack =
      smallest === undefined
        ? ''
        : `; ${modules(smallest.modules)} in all ${smallest.modules === 1 ? 'does' : 'do'}`
    return [`${target}: no single step looked at reaches them${stack}.`]
  }
  const step = cheapest(enough)
  return [
    `${target} are reached with: ${step.what}, ${priceWords(step)} ` +
      `(${Math.floor(100 * step.share!)} in 100).`,
  ]
}

/** What is left to buy once a step is taken that costs nothing. */
function withFreeStep(rows: readonly StackRow[], { free }: Around): string[] {
  if (free === null) return []
  const without = rows.find(({ met }) => met === true)?.modules ?? null
  const { what, smallest } = free
  if (smallest === null || smallest === without) return []
  const instead = without === null ? ', and without it no stack of this base' : `, not ${without}`
  return [
    `With one step that costs nothing (${what}) ${modules(smallest)} ${smallest === 1 ? 'reaches' : 'reach'} them${instead}.`,
  ]
}

/** The step that gives most for its money, and where another gives more hours, that one. */
function take(
  steps: readonly NextStep[],
  comparedBy: Case,
  base: StackRow,
  around: Around,
): string[] {
  const { horizonHours } = around
  if ((base[comparedBy] ?? 0) >= horizonHours) {
    return [`Every start followed lasts over ${horizonHours} h: no step can show what it adds.`]
  }
  const [first] = steps
  if (first === undefined || !counts(first, comparedBy)) {
    return [`No step looked at adds an hour ${IN_CASE[comparedBy]}.`]
  }
  const why =
    first.price === null
      ? 'it adds most hours; price not given'
      : first.price === 0
        ? 'it costs nothing to buy'
        : `it adds most hours for its money, ${priceWords(first)}`
  const lead = base.share === 1 ? 'To last longer still' : 'Take first'
  const said = [`${lead}: ${first.what}: ${gainWords(first, comparedBy, around)}; ${why}.`]
  const most = steps.toSorted((a, b) => moreHours(a, b, comparedBy))[0]!
  if (most !== first && (most.gained[comparedBy] ?? 0) >= (first.gained[comparedBy] ?? 0) + 1) {
    const gain = gainWords(most, comparedBy, around)
    said.push(`Most hours: ${most.what}: ${gain}; ${priceWords(most)}.`)
  }
  return said
}

/** What gives most where nobody gets up for it. */
function withNobodyWoken(steps: readonly NextStep[], comparedBy: Case, around: Around): string[] {
  const [first, ...others] = steps
  if (first?.kind !== 'person' || !counts(first, comparedBy)) return []
  const most = others.toSorted((a, b) => moreHours(a, b, comparedBy))[0]
  if (most === undefined || !counts(most, comparedBy)) return []
  const gain = gainWords(most, comparedBy, around)
  return [`Where nobody has agreed to be woken: ${most.what}: ${gain}; ${priceWords(most)}.`]
}

/** The cheapest known way to another day; else any. */
function anotherDay(
  steps: readonly NextStep[],
  which: 'median' | 'worst',
  where: string,
  { horizonHours }: Around,
): string[] {
  const known = steps.filter(({ anotherDay: day }) => day[which] !== null)
  if (known.length === 0) return []
  const giving = known.filter(({ anotherDay: day }) => day[which] === true)
  if (giving.length === 0) {
    const open = steps.length - known.length
    const found =
      open === 0
        ? 'no single step looked at gives them'
        : `not to be told, for ${open === 1 ? '1 step lasts' : `${open} steps last`} longer than the ` +
          `${horizonHours} h followed`
    return [`Another ${ANOTHER} hours ${where}: ${found}.`]
  }
  const step = cheapest(giving)
  return [`Another ${ANOTHER} hours ${where}: ${step.what}, ${priceWords(step)}.`]
}

function cheapest(steps: readonly NextStep[]): NextStep {
  return steps.toSorted((a, b) => (a.price ?? Infinity) - (b.price ?? Infinity))[0]!
}

/** What a larger or steeper array does at best; that it does nothing is news too. */
function sunSays(steps: readonly NextStep[], { month, sky }: Around): string[] {
  const sun = steps.filter(({ kind }) => kind === 'array' || kind === 'tilt')
  if (sun.length === 0) return []
  const most = (key: Case | 'share'): number =>
    Math.max(0, ...sun.map(({ gained }) => gained[key] ?? 0))
  const under = `in ${monthName(month)} (${skyName(sky)})`
  const points = Math.floor(100 * most('share'))
  if (points === 0 && CASES.every((each) => most(each) < 1)) {
    const steeper = sun.some(({ kind }) => kind === 'tilt') ? ' nor a steeper one' : ''
    return [
      `More sun adds nothing here ${under}: neither a larger array${steeper} gives an hour more, or ` +
        'brings 1 in 100 cuts more to their end. It is no answer to this cut.',
    ]
  }
  return [
    `More sun ${under}, at best: ${Math.floor(most('worstHours'))} h at worst, ` +
      `${Math.floor(most('medianHours'))} h in the middle case, ${points} in 100 cuts more to their end.`,
  ]
}

/** `38 h more in the middle case`; a step that costs some of the cuts says so. */
function gainWords(step: NextStep, which: Case, { horizonHours }: Around): string {
  const over = (step[which] ?? 0) >= horizonHours ? 'over ' : ''
  const hours = `${over}${Math.floor(step.gained[which] ?? 0)} h more ${IN_CASE[which]}`
  const share = step.gained.share ?? 0
  if (share > -0.01) return hours
  return `${hours}, but ${Math.ceil(-100 * share)} in 100 fewer of these cuts to their end`
}

function priceWords({ price }: NextStep): string {
  if (price === null) return 'price not given'
  return price === 0 ? 'nothing to buy' : `price ${Math.round(price)}`
}

function modules(count: number): string {
  return count === 1 ? '1 module' : `${count} modules`
}
