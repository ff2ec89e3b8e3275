// What more modules cannot mend: a limit other than energy.
//
// The largest stack is ridden again with one limit lifted at a time. Where it then lasts longer,
// that limit ends rides, and no module moves it.

import type { Plant } from '../../equipment/plant.js'
import { rulesOf } from '../../island/rules.js'
import type { Prepared } from '../../series/prepare.js'
import type { HourFigures } from '../hour-figures.js'
import type { RideQuestion } from '../ride-question.js'
import type { Equipped } from '../scenario.js'
import { CASES, POINT, type StackRow, stackFigures } from './stack-rows.js'

/** Hours that differ by less are the same to whoever reads them. */
const HOUR = 1
/** Short rides are longer by less: a quarter of an hour, and a tenth. */
const QUARTER = 0.25
const TENTH = 1.1

/** More than any house draws or gives. [kW] */
const PLENTY = 1000

const INVERTER = { ratedKw: PLENTY, minuteKva: PLENTY, startingKva: PLENTY }
const DISCHARGE = { dischargeKw: PLENTY }

const LIFTED = {
  inverter: INVERTER,
  discharge: DISCHARGE,
  'inverter and discharge': { ...INVERTER, ...DISCHARGE },
  charge: { chargeKw: PLENTY, chargeAcKw: PLENTY },
} satisfies Record<string, Partial<Plant>>

export type Limit = keyof typeof LIFTED

/** How many stacks are ridden to find what binds. */
export const LIMITS_TRIED = Object.keys(LIFTED).length

export interface StackLimits {
  /** The stack from which on no larger one raises the share by a point; null where it rises on. */
  readonly stopsAt: number | null
  /** Limits that end rides of the largest stack, with its share were they not there. */
  readonly binding: readonly { readonly limit: Limit; readonly share: number | null }[]
  /** The same in sentences. */
  readonly said: readonly string[]
}

/**
 * @param equipped  the largest stack
 * @param figures   its figures
 */
export function stackLimits(
  prepared: Prepared,
  question: RideQuestion,
  rows: readonly StackRow[],
  equipped: Equipped,
  figures: HourFigures,
): StackLimits {
  const stopsAt = stopsRising(rows)
  if (figures.share === 1) return { stopsAt, binding: [], said: falls(rows) }
  const names = Object.keys(LIFTED) as Limit[]
  const lifted = stackFigures(
    prepared,
    question,
    names.map((name) => withPlant(prepared, equipped, LIFTED[name])),
  )
  const found = names.flatMap((limit, i) =>
    isLonger(lifted[i]!, figures) ? [{ limit, share: lifted[i]!.share }] : [],
  )
  // Both together are named only where neither alone makes the difference.
  const alone = found.some(({ limit }) => limit === 'inverter' || limit === 'discharge')
  const binding = found.filter(({ limit }) => !alone || limit !== 'inverter and discharge')
  return { stopsAt, binding, said: [...sentences(rows, stopsAt, binding, figures), ...falls(rows)] }
}

/** The first stack that no larger one betters by a point; null for the largest, and at 1. */
function stopsRising(rows: readonly StackRow[]): number | null {
  const shares = rows.map(({ share }) => share ?? 0)
  const at = shares.findIndex((share, i) =>
    shares.slice(i + 1).every((later) => later < share + POINT),
  )
  return at === rows.length - 1 || shares[at]! >= 1 - POINT ? null : at + 1
}

function withPlant(prepared: Prepared, equipped: Equipped, change: Partial<Plant>): Equipped {
  const plant = { ...equipped.plant, ...change }
  const rules = rulesOf(equipped.house, plant, prepared.demand.comfortKw.length)
  return { ...equipped, plant, rules }
}

function isLonger(without: HourFigures, withLimit: HourFigures): boolean {
  return (
    (without.share ?? 0) >= (withLimit.share ?? 0) + POINT ||
    CASES.some((which) => {
      const [now, then] = [without[which] ?? 0, withLimit[which] ?? 0]
      return now >= then + QUARTER && now >= TENTH * then
    })
  )
}

const WORDS: Readonly<Record<Limit, string>> = {
  inverter: 'what the battery inverter carries (its rating, and a start beside it)',
  discharge: 'what the battery gives at once (its discharge limit)',
  'inverter and discharge': 'what battery inverter and battery carry at once',
  charge: 'what the battery may take at once (its charge limit): sun or generator go unused',
}

function sentences(
  rows: readonly StackRow[],
  stopsAt: number | null,
  binding: StackLimits['binding'],
  figures: HourFigures,
): string[] {
  const most = `${rows.length} module${rows.length === 1 ? '' : 's'}`
  const said = binding.map(
    ({ limit, share }) =>
      `With ${most} rides end by ${WORDS[limit]}, not by energy alone. Were it not there, ` +
      `${changed(share, figures.share)}. More modules do not mend that.`,
  )
  if (figures.changeoverLostShare > 0) {
    said.push(
      `With ${most}, ${Math.ceil(100 * figures.changeoverLostShare)} in 100 starts or fewer are lost ` +
        'at the changeover: more is running than can be taken over. No module helps there.',
    )
  }
  if (stopsAt !== null) {
    said.push(
      `From ${stopsAt} module${stopsAt === 1 ? '' : 's'} on no larger stack lasts 1 in 100 more of these cuts` +
        (binding.length > 0
          ? '.'
          : ', and neither charge limit, discharge limit nor inverter is why: the added hours end ' +
            'short of the cut, or at an hour that does not help.'),
    )
  }
  return said
}

/** A larger stack that lasts less long, or fewer cuts. */
function falls(rows: readonly StackRow[]): string[] {
  const isLess = (row: StackRow, i: number): boolean => {
    const before = rows[i - 1]
    if (before === undefined) return false
    return (
      (row.share ?? 0) <= (before.share ?? 0) - POINT ||
      CASES.some((each) => (row[each] ?? 0) <= (before[each] ?? 0) - HOUR)
    )
  }
  if (!rows.some(isLess)) return []
  return [
    'More modules are not always a longer ride here: they move the hour at which the battery runs ' +
      'low, and so whether somebody is up to start a generator, comfort loads are on, or the solar ' +
      'trips. Trace one of each to see it.',
  ]
}

/** What lifting a limit does; where no cut more is lasted, it is hours. */
function changed(share: number | null, now: number | null): string {
  if (hundred(share) === hundred(now)) return 'rides would be longer, if not long enough'
  return `${hundred(share)} in 100 such cuts would be lasted, not ${hundred(now)}`
}

function hundred(share: number | null): string {
  return share === null ? 'unknown' : String(Math.floor(100 * share))
}
