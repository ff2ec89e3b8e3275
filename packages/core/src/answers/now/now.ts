// We are off and the battery says so much: how long, what to switch off, when to pull the cord.

import { clockMinute, inSpan, onHousesYear } from '../../axis/calendar.js'
import type { Person, Site } from '../../house/house.js'
import type { State } from '../../island/state.js'
import { loadColumns } from '../../load/demand.js'
import type { LoadRecords } from '../../load/meter-record.js'
import { daysOfCut } from '../../series/dull.js'
import type { Prepared } from '../../series/prepare.js'
import { type Beside, besideOf } from '../beside.js'
import { checkQuestion } from '../check-question.js'
import { READING_ERROR } from '../scenario.js'
import { startMinute } from '../trace-cut.js'
import type { Spell } from '../words.js'
import { type HandStart, latestHandStart, standStill } from './hand-start.js'
import { type Lasts, lastsOf } from './lasts.js'
import {
  islandUnder,
  NOW_SKIES,
  type NowQuestion,
  type NowScene,
  type NowSky,
  sceneOf,
  stateNow,
} from './scene.js'
import { type NowSwitches, switches } from './switches.js'

export interface NowUnderSky {
  /** As the file has it, its generator too. */
  readonly lasts: Lasts
  /** Nobody and nothing starts the generator; null for a house without one. */
  readonly batteryAlone: Lasts | null
  /** The latest start by hand that saves every critical load, at any hour; null where none does. */
  readonly start: HandStart | null
  /** The same by somebody called in their hours; `goAt` is when. Null without a person. */
  readonly startInHours: (HandStart & { readonly goAt: number }) | null
}

export interface NowAnswer extends Beside, NowSwitches {
  readonly house: string
  readonly site: Site
  /** Now on the axis of the house's year, and whether another year was asked about. */
  readonly minute: number
  readonly otherYear: boolean
  readonly soc: number
  /** After the error of the reading. */
  readonly takenSoc: number
  readonly modules: number
  readonly health: number
  readonly seed: number
  readonly hours: number
  readonly spell: Spell
  readonly skies: Readonly<Record<NowSky, NowUnderSky>>
}

/**
 * @param records  those that loads and arrays name, by that name
 * @param plain    the house as it was read, to tell which defaults it leans on
 * @throws         InputError where the question is at fault
 */
export function nowAnswer(
  prepared: Prepared,
  question: NowQuestion,
  records: LoadRecords = {},
  plain?: unknown,
): NowAnswer {
  const { house, calendar } = prepared
  checkQuestion(question, ['atMs', 'soc'])
  const { atMs, soc, hours = 48, winters = 10, seed = house.seed } = question
  const thereMs = onHousesYear(calendar, atMs)
  const minute = startMinute(prepared, thereMs)
  const takenSoc = Math.max(0, soc - READING_ERROR)
  const scene = sceneOf(prepared, { ...question, hours, winters, seed }, takenSoc, minute)
  const { equipped } = scene
  return {
    house: house.house,
    site: house.site,
    minute,
    otherYear: thereMs !== Math.floor(atMs / 60000) * 60000,
    soc,
    takenSoc,
    modules: equipped.modules,
    health: equipped.health,
    seed,
    hours,
    spell: { winters, days: daysOfCut(hours) },
    skies: Object.fromEntries(NOW_SKIES.map((sky) => [sky, underSky(scene, sky)])) as Record<
      NowSky,
      NowUnderSky
    >,
    ...switches(scene, loadColumns(house, calendar, records, prepared.demand.airC)),
    ...besideOf(prepared, equipped, monthOf(prepared, minute), plain),
  }
}

function underSky(scene: NowScene, sky: NowSky): NowUnderSky {
  const { prepared, equipped, loads } = scene
  const { house } = equipped
  const whole = islandUnder(scene, equipped, sky)
  const lived = (state: State): Lasts => lastsOf(prepared, house, whole, state, loads)
  const lasts = lived(stateNow(equipped))
  if (house.generator === undefined) {
    return { lasts, batteryAlone: null, start: null, startInHours: null }
  }
  // A set that is out of order stands still, and the log knows that there is one.
  const alone = lived({ ...stateNow(equipped), outOfOrder: true })
  const stood = standStill(whole, stateNow(equipped), loads)
  return {
    lasts,
    batteryAlone: alone,
    start: latestHandStart(stood),
    startInHours: house.person === undefined ? null : inHours(scene, stood, house.person),
  }
}

/** Somebody called is there in their hours and has pulled the cord so many minutes later. */
function inHours(
  { prepared, minute }: NowScene,
  stood: ReturnType<typeof standStill>,
  person: Person,
): NowUnderSky['startInHours'] {
  const { wallMinute, n } = prepared.calendar
  const takes = Math.ceil(person.minutes)
  const [from, to] = [person.from, person.to].map((at) => clockMinute(at) ?? 0)
  const found = latestHandStart(
    stood,
    (i) => i >= takes && inSpan(wallMinute[(minute + i - takes) % n]!, from!, to!),
  )
  return found === null ? null : { ...found, goAt: found.at - takes }
}

function monthOf({ calendar }: Prepared, minute: number): number {
  return calendar.days[calendar.dayOf[minute]!]!.month
}
