// A kettle, a shower, a car charge: one event of each, this house's own where it has one.

import type { LoadInput } from '../../house/house.js'
import { typicalRow } from '../../house/typical-loads.js'
import { spanMinutes } from '../../load/day-filter.js'
import { startExtraKva } from '../../load/starting.js'

/** Something that is switched on once. */
export interface OneEvent {
  readonly name: string
  readonly kw: number
  /** [min], the last may be a part of one. */
  readonly minutes: number
  readonly runningKva: number
  /** Above the running power, in its start. [kVA] */
  readonly startKva: number
  /** `house` where a load of the house says so, `typical` where the table of typical loads does. */
  readonly from: 'house' | 'typical'
}

const KINDS = [
  { name: 'kettle', known: /kettle/i },
  { name: 'electric shower', known: /shower(?! pump)/i },
  { name: 'car charger', known: /car charger|vehicle|wall ?box|ev charger/i },
] as const

export function oneEvents(loads: readonly LoadInput[]): OneEvent[] {
  return KINDS.map(({ name, known }) => {
    const typical = typicalRow(name)!.load as LoadInput
    const own =
      loads.find(({ like }) => like === name) ?? loads.find((load) => known.test(load.name))
    const minutes = own === undefined ? null : minutesOf(own)
    if (own?.w === undefined || minutes === null) return eventOf(name, typical, 'typical')
    return eventOf(own.name, own, 'house')
  })
}

function eventOf(name: string, load: LoadInput, from: OneEvent['from']): OneEvent {
  const kw = (load.w ?? 0) / 1000
  const { powerFactor } = load
  return {
    name,
    kw,
    minutes: minutesOf(load)!,
    runningKva: kw / powerFactor,
    startKva: load.startingMultiple === undefined ? 0 : startExtraKva(load),
    from,
  }
}

/** Length of one event; null where the line does not tell it. */
function minutesOf({ w, events, charging, at }: LoadInput): number | null {
  if (events !== undefined) return events.minutes
  if (charging !== undefined) return (60 * charging.kwhPerDay) / ((w ?? 0) / 1000)
  if (at?.[0] === undefined) return null
  const [from, to] = spanMinutes(at[0])
  return (to - from + 1440) % 1440 || 1440
}
