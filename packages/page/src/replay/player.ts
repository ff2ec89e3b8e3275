// Simulates a cut again: the same core, the same house, nothing worked out before but the years.

import {
  type CutQuestion,
  type CutStage,
  type CutStory,
  cutStage,
  daysOfCut,
  demandFrom,
  firstNoonDay,
  type House,
  type HouseFiles,
  type LoadColumns,
  loadColumns,
  type Prepared,
  prepare,
  type SkyKind,
  traceOn,
} from '@tideover/core'
import { type Carried, filesOf, PLAYED_SKIES } from './carried.js'

/** What a person chooses. */
export interface Choice {
  /** 1..12 */
  readonly month: number
  /** Day of the month, 1..31; the last where the month has fewer. */
  readonly day: number
  /** On the clock of the house, 0..23 */
  readonly hour: number
  /** [h] */
  readonly hours: number
  readonly sky: SkyKind
  /** Names of loads that are switched off. */
  readonly off: readonly string[]
}

/** Little sun and much of it: each takes other ways through the rules. */
const RUN_IN_MONTHS = [1, 4, 7] as const
/** Sets of loads kept ready beside all of them; each holds columns of a year. */
const KEPT = 2

export class Player {
  readonly prepared: Prepared
  private readonly files: HouseFiles
  private readonly stages = new Map<string, CutStage>()
  private columns: LoadColumns | null = null

  constructor(private readonly carried: Carried) {
    this.files = filesOf(carried)
    this.prepared = prepare(carried.house, this.files)
    this.stages.set(nameOf([]), cutStage(this.prepared))
    this.warmUp()
  }

  /** A script runs slowly until it has run for a while: some cuts that nobody sees. */
  private warmUp(): void {
    const hours = this.carried.lengths.at(-1) as number
    for (const month of RUN_IN_MONTHS) {
      for (const sky of PLAYED_SKIES) this.play({ month, day: 14, hour: 18, hours, sky, off: [] })
    }
  }

  /** Whether a set of loads has to be made ready first, which takes longer. */
  isReady({ off }: Choice): boolean {
    return this.stages.has(nameOf(off))
  }

  play(choice: Choice): CutStory {
    return traceOn(this.stage(choice.off), questionOf(this.carried, this.prepared, choice))
  }

  /** The house as it lives with some loads switched off. */
  preparedFor(off: readonly string[]): Prepared {
    return this.stage(off).prepared
  }

  private stage(off: readonly string[]): CutStage {
    const name = nameOf(off)
    const found = this.stages.get(name)
    if (found !== undefined) return found
    const { calendar, demand } = this.prepared
    const house = without(this.carried.house, off)
    this.columns ??= loadColumns(this.carried.house, calendar, this.files, demand.airC)
    const whole = this.stages.get(nameOf([])) as CutStage
    const switched = demandFrom(this.columns, { house, calendar, airC: demand.airC })
    const stage = cutStage({ ...this.prepared, house, demand: switched }, whole)
    const [, oldest] = [...this.stages.keys()]
    if (this.stages.size > KEPT && oldest !== undefined) this.stages.delete(oldest)
    this.stages.set(name, stage)
    return stage
  }
}

function nameOf(off: readonly string[]): string {
  return JSON.stringify([...off].sort())
}

/** A load switched off is one that is not on the island: a meter that holds it is still less it. */
export function without(house: House, off: readonly string[]): House {
  const names = new Set(off)
  return {
    ...house,
    loads: house.loads.map((load) =>
      names.has(load.name) ? { ...load, tier: 'gridOnly' as const } : load,
    ),
  }
}

/** The question to `trace` behind a choice. */
export function questionOf(carried: Carried, prepared: Prepared, choice: Choice): CutQuestion {
  const { modules, health, startSoc, winters, seed } = carried.asked
  const { calendar } = prepared
  const minute = minuteOf(prepared, choice)
  const years = choice.sky in carried.years ? carried.years[choice.sky as 'dull'] : null
  const year = years?.[daysOfCut(choice.hours)]?.[firstNoonDay(prepared, minute)]
  return {
    ...{ modules, health, startSoc, winters, seed },
    startMs: calendar.startMs + minute * 60_000,
    hours: choice.hours,
    sky: choice.sky,
    ...(year === undefined ? {} : { syntheticYear: year }),
  }
}

/** Minute of the axis; an hour that the clock leaves out in spring is the one after it. */
function minuteOf({ calendar }: Prepared, { month, day, hour }: Choice): number {
  const days = calendar.days.filter((each) => each.month === month)
  const local = days[Math.min(day, days.length) - 1] as (typeof days)[number]
  let minute = local.start
  while (minute < local.end - 1 && (calendar.wallMinute[minute] as number) < hour * 60) minute++
  return minute
}
