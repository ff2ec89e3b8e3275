// One month looked at closely: every sky, the middle and the worst cut, what failing would cost.

import { isoUtc } from '../../axis/calendar.js'
import type { SkyKind } from '../../sky/sky.js'
import { type HourFigures, hourFigures } from '../hour-figures.js'
import type { BatchRides } from '../month-rides.js'
import { monthRidesOf } from '../month-rides.js'
import type { MonthSky } from '../month-sky.js'
import type { Pattern } from '../patterns.js'
import { skiesToShow } from '../ride-jobs.js'
import { type Equipped, equip } from '../scenario.js'
import {
  CHANCES,
  type Chances,
  lastingShares,
  leastShare,
  type NamedChances,
  NEVER_FAILS,
  shiftedShares,
} from './failing.js'
import { casesOf, type FuelFigures, fuelFigures, type Spread, spreadOf } from './fuel-figures.js'
import { hasWorst, type PlanGround, planSky, SAMPLE_MINUTES } from './ground.js'
import { type MonthWalk, monthWalks } from './month-walks.js'
import { heldBack, type QuietHours, quietMinutes } from './quiet.js'

/** When the set is started or filled. */
export interface Visit {
  /** ISO 8601, UTC. */
  readonly time: string
  readonly starts: 'by hand' | 'by itself'
  /** Whether somebody fills the tank from a can for it. */
  readonly pours: boolean
}

/** One cut of the month. */
export interface PlanCase {
  readonly start: string
  /** For `trace --synthetic-year`. */
  readonly year: number
  readonly litres: number
  readonly runHours: number
  /** Of those with a stack too cold to be charged: the set then carries the loads alone. */
  readonly tooColdHours: number
  readonly visits: readonly Visit[]
}

/** A share, and the pattern whose starts it is of. */
interface Lasting {
  readonly share: number | null
  readonly hardest: Pattern
}

export interface PlanQuiet extends QuietHours {
  /** Of the cut, with nothing held back. [h] */
  readonly runHours: Spread
  /** With no start of the set in quiet hours, by the rule; null where no rule tells it. */
  readonly heldBack: (Lasting & { readonly runHours: Spread; readonly litres: Spread }) | null
}

export interface FailingRow extends NamedChances, Lasting {
  /** Of 1 cut, what the chance takes; null where a share is not known. */
  readonly lostShare: number | null
}

export interface Closer {
  readonly month: number
  readonly skies: Partial<Record<SkyKind, FuelFigures>>
  /** Cuts in which tank and cans as they stand are empty before the end, share of those walked. */
  readonly dryShare: number
  /** Share of all starts that last the cut: as it stands, and without the set. */
  readonly lasting: Lasting
  readonly withoutSet: Lasting
  readonly middle: PlanCase
  /** Null where the sky knows no worst. */
  readonly worst: PlanCase | null
  readonly quiet: PlanQuiet | null
  readonly failing: readonly FailingRow[]
}

/** @param told  called after each part of the work */
export function lookCloser(ground: PlanGround, month: number, told: () => void): Closer {
  const { prepared, question, hours, loads, enough, asStands, cutMinutes } = ground
  const monthSky = planSky(ground, month, ground.promise)
  const heldStands = heldHouse(ground, asStands)
  const held = heldHouse(ground, enough)
  const bare = equip(prepared, { ...question, generator: false })
  const houses = [asStands, bare, ...(heldStands === null ? [] : [heldStands])]
  const variants = houses.map((equipped) => ({
    equipped,
    horizon: cutMinutes,
    minutesOnly: true,
  }))
  const rides = monthRidesOf(prepared, monthSky, variants, loads, { month, hours })
  told()
  const [main, without, quiet] = rides.map((each) => hourFigures(prepared, each, hours)) as [
    HourFigures,
    HourFigures,
    HourFigures | undefined,
  ]
  const span = { hours, everyMinutes: SAMPLE_MINUTES, branches: true }
  const walked = monthWalks(prepared, monthSky, [asStands], loads, span)[0]!
  const fed = monthWalks(prepared, monthSky, held === null ? [enough] : [enough, held], loads, {
    ...span,
    branches: false,
  })
  told()
  const cases = casesOf(fed[0]!)
  return {
    month,
    skies: skiesOf(ground, month, monthSky, fed[0]!, told),
    dryShare: walked.filter(({ ranDry }) => ranDry).length / walked.length,
    lasting: lastingOf(main),
    withoutSet: lastingOf(without),
    middle: caseOf(ground, cases.middle),
    worst: hasWorst(monthSky) ? caseOf(ground, cases.worst) : null,
    quiet: quietOf(ground, hasWorst(monthSky), fed, quiet),
    failing: failingRows(ground, walked, main, rides[0]!.batches),
  }
}

function lastingOf({ share, hardest }: HourFigures): Lasting {
  return { share, hardest }
}

function skiesOf(
  ground: PlanGround,
  month: number,
  own: MonthSky,
  promised: readonly MonthWalk[],
  told: () => void,
): Closer['skies'] {
  const { prepared, promise, hours, loads, enough, cutMinutes } = ground
  const out: Closer['skies'] = { [promise]: fuelFigures(promised, cutMinutes, hasWorst(own)) }
  const span = { hours, everyMinutes: SAMPLE_MINUTES, branches: false }
  // The clear sky last, whatever was asked.
  const others = skiesToShow(prepared, promise).filter((kind) => kind !== promise)
  for (const kind of others.sort((a, b) => Number(a === 'clear') - Number(b === 'clear'))) {
    const sky = planSky(ground, month, kind)
    const walks = monthWalks(prepared, sky, [enough], loads, span)[0]!
    out[kind] = fuelFigures(walks, cutMinutes, hasWorst(sky))
    told()
  }
  return out
}

function caseOf(ground: PlanGround, walk: MonthWalk): PlanCase {
  const { calendar } = ground.prepared
  const { start } = ground.enough.house.generator!
  const end = walk.which + ground.cutMinutes
  return {
    start: isoUtc(calendar, walk.minute),
    year: walk.year,
    litres: walk.litres,
    runHours: walk.ranIn.length / 60,
    tooColdHours: walk.tooColdMinutes / 60,
    visits: walk.starts
      .filter(({ minute }) => minute < end)
      .map(({ askedAt, pours }) => ({
        time: isoUtc(calendar, askedAt + walk.windowFrom),
        starts: start === 'by hand' ? 'by hand' : 'by itself',
        pours,
      })),
  }
}

function heldHouse({ prepared, question }: PlanGround, equipped: Equipped): Equipped | null {
  const house = question.quiet === undefined ? null : heldBack(equipped.house, question.quiet)
  return house === null ? null : equip({ ...prepared, house }, question)
}

function quietOf(
  { prepared, question, cutMinutes }: PlanGround,
  isWorst: boolean,
  [free, held]: readonly (readonly MonthWalk[])[],
  ridden: HourFigures | undefined,
): PlanQuiet | null {
  const { quiet } = question
  if (quiet === undefined) return null
  const hoursOf = (walks: readonly MonthWalk[]): Spread =>
    spreadOf(
      walks.map((walk) => quietMinutes(prepared.calendar, walk, quiet) / 60),
      isWorst,
    )
  if (held === undefined || ridden === undefined) {
    return { ...quiet, runHours: hoursOf(free!), heldBack: null }
  }
  const { litres } = fuelFigures(held, cutMinutes, isWorst)
  return {
    ...quiet,
    runHours: hoursOf(free!),
    heldBack: { ...lastingOf(ridden), runHours: hoursOf(held), litres },
  }
}

function failingRows(
  { prepared, question, cutMinutes, asStands }: PlanGround,
  walks: readonly MonthWalk[],
  main: HourFigures,
  batches: readonly BatchRides[],
): FailingRow[] {
  const { startFailsShare, hoursBetweenFailures = null, start } = asStands.house.generator!
  const stated: Chances = { startFailsShare, hoursBetweenFailures }
  const sharesAt = (chances: Chances) =>
    lastingShares(prepared.calendar, walks, batches, cutMinutes, chances)
  const at = (chances: Chances): Lasting =>
    leastShare(shiftedShares(main.shareByPattern, sharesAt, stated, chances))
  const never = at(NEVER_FAILS)
  const rows = CHANCES.filter(({ name }) => start === 'by hand' || name !== 'petrol, by hand')
  const own = question.chances
  const asked = own === undefined ? [] : [{ ...own, name: 'as asked', basis: 'given' }]
  return [...rows, ...asked].map((chances): FailingRow => {
    const found = at(chances)
    const isKnown = never.share !== null && found.share !== null
    const lostShare = isKnown ? Math.max(0, never.share! - found.share!) : null
    return { ...chances, ...found, lostShare }
  })
}
