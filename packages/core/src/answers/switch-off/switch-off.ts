// What to switch off, what each load costs in hours, and what one kettle costs in minutes.

import { monthRange } from '../../axis/calendar.js'
import { loadColumns } from '../../load/demand.js'
import type { LoadRecords } from '../../load/meter-record.js'
import { daysOfCut } from '../../series/dull.js'
import type { Prepared } from '../../series/prepare.js'
import type { SkyKind } from '../../sky/sky.js'
import { type Beside, besideOf } from '../beside.js'
import { checkQuestion } from '../check-question.js'
import type { RideAnswer } from '../ride.js'
import { variantsOf } from '../ride-jobs.js'
import type { RideQuestion } from '../ride-question.js'
import { equip } from '../scenario.js'
import { drawnWarnings } from '../warnings.js'
import type { Spell } from '../words.js'
import { oneEvents } from './event-kinds.js'
import { hoursOfRides, monthStarts, type RideHours, spellsWith } from './month-starts.js'
import { type EventCost, eventCost } from './one-event.js'
import { type SwitchOrder, switchOrder } from './order.js'

/** Skies of a question that looks at one alone; a bright one is no ground for what to leave on. */
export const DARK_SKIES = ['dull', 'none'] as const

export interface SwitchOffQuestion extends RideQuestion {
  /** Default `dull`. */
  readonly sky?: (typeof DARK_SKIES)[number]
}

export interface SwitchedLoad {
  readonly name: string
  readonly tier: 'critical' | 'comfort'
  /** Mean of the days of the month, at the load. [kWh] */
  readonly kwhADay: number
  /** What its absence alone adds; null where nothing else must stay on. */
  readonly alone: RideHours | null
  /** How long the others then last. */
  readonly aloneLasts: RideHours | null
  /** Its place in the best order, from 1; null where it adds nothing more. */
  readonly place: number | null
  /** What it adds given all before it in the order, and how long the others then last. */
  readonly adds: RideHours | null
  readonly lasts: RideHours | null
}

type Asked = 'house' | 'site' | 'month' | 'cutHours' | 'modules' | 'startSoc' | 'health' | 'seed'

export interface SwitchOffAnswer extends Beside, Pick<RideAnswer, Asked> {
  readonly sky: SkyKind
  readonly spell: Spell
  /** Whether the house's generator was counted on; null for a house without one. */
  readonly withGenerator: boolean | null
  readonly starts: number
  /** Figures of so many hours are lower bounds. */
  readonly horizonHours: number
  /** With every load on. */
  readonly base: RideHours
  /** In the best order, those that add nothing more after those of their tier. */
  readonly loads: readonly SwitchedLoad[]
  /** Share of usable capacity below which comfort loads are off anyway; null without any. */
  readonly comfortOffBelow: number | null
  readonly events: readonly EventCost[]
}

/**
 * @param records  those that loads and arrays name, by that name
 * @param plain    the house as it was read, to tell which defaults it leans on
 * @param told     after each set of loads that was tried
 * @throws         InputError where the question does not fit the house
 */
export function switchOffAnswer(
  prepared: Prepared,
  question: SwitchOffQuestion,
  records: LoadRecords = {},
  plain?: unknown,
  told: () => void = () => {},
): SwitchOffAnswer {
  checkQuestion(question, ['month', 'hours'])
  const { house, calendar, demand } = prepared
  const { month, hours, sky = 'dull', winters = 10, seed = house.seed } = question
  const { equipped, horizon } = variantsOf(prepared, question, sky).main!
  const starts = monthStarts(prepared, question, horizon)
  const columns = loadColumns(house, calendar, records, demand.airC)
  const base = spellsWith(starts, equipped, demand)
  const found = switchOrder({ starts, equipped, columns, told }, base)
  const bare = equip(prepared, { ...question, generator: false })
  const scene = { starts, equipped: bare, meanCriticalKw: mean(prepared, month) }
  const { modules, startSoc, health } = equipped
  const beside = besideOf(prepared, equipped, month, plain)
  return {
    ...{ house: house.house, site: house.site, month, cutHours: hours },
    ...{ modules, startSoc, health, seed, sky },
    withGenerator: house.generator === undefined ? null : question.generator !== false,
    spell: { winters, days: daysOfCut(hours) },
    starts: starts.starts,
    horizonHours: horizon / 60,
    base: hoursOfRides(starts, base, starts.loads),
    loads: rowsOf(prepared, month, found, (name) => columns.columns.get(name)!.kw),
    comfortOffBelow: demand.comfortKw.length === 0 ? null : house.comfort.dropBelow,
    events: oneEvents(house.loads).map((event) => eventCost(scene, event)),
    ...beside,
    warnings: [...drawnWarnings(equipped, 'Hours are told'), ...beside.warnings],
  }
}

function rowsOf(
  { house, calendar }: Prepared,
  month: number,
  { alone, order }: SwitchOrder,
  kwOf: (name: string) => Float64Array,
): SwitchedLoad[] {
  const [from, to] = monthRange(calendar, month)
  const rows = house.loads.flatMap(({ name, tier }): SwitchedLoad[] => {
    if (tier === 'gridOnly') return []
    const at = order.findIndex((each) => each.name === name)
    const kwh = kwOf(name)
      .subarray(from, to)
      .reduce((sum, kw) => sum + kw / 60, 0)
    return [
      {
        ...{ name, tier, kwhADay: (kwh * 1440) / (to - from) },
        alone: alone.get(name)?.adds ?? null,
        aloneLasts: alone.get(name)?.lasts ?? null,
        place: at < 0 ? null : at + 1,
        adds: order[at]?.adds ?? null,
        lasts: order[at]?.lasts ?? null,
      },
    ]
  })
  const rank = ({ tier, place }: SwitchedLoad): number =>
    (tier === 'critical' ? 1e6 : 0) + (place ?? 1e3)
  return rows.sort((a, b) => rank(a) - rank(b))
}

function mean({ calendar, demand }: Prepared, month: number): number {
  const [from, to] = monthRange(calendar, month)
  return demand.criticalKw.subarray(from, to).reduce((sum, kw) => sum + kw, 0) / (to - from)
}
