// What has to be waited for: solar, grid, and somebody to pull the cord.

import { clockMinute, DAY_MINUTES, monthName, monthRange } from '../../axis/calendar.js'
import { inverterLossKw, standingKw } from '../../equipment/plant.js'
import type { GridCode } from '../../house/house.js'
import type { Prepared } from '../../series/prepare.js'
import { READING_ERROR } from '../scenario.js'
import { coldestPlaceC } from './cold.js'
import { coldestLoadsOffAt } from './coldest-charge.js'
import { figure, type Look, short } from './finding.js'

/** Least wait before an inverter connects again, and how well that is known. [s] */
const CODE_WAITS: Readonly<Record<GridCode, readonly [seconds: number, known: string]>> = {
  G98: [20, 'from memory'],
  G99: [20, 'from memory'],
  IEEE1547: [300, 'its default, from memory'],
  AS4777: [60, 'AS/NZS 4777.2:2020'],
  EN50549: [60, 'from memory'],
}

export const solarWait: Look = ({ house }) => {
  const waits = house.arrays.flatMap((array) => array.inverter?.reconnectSeconds ?? [])
  if (waits.length === 0) return []
  const seconds = Math.max(...waits)
  const code = house.site.gridCode
  const least = code === undefined ? undefined : CODE_WAITS[code]
  const tooShort = least !== undefined && seconds < least[0]
  return [
    {
      id: 'solar-wait',
      grade: tooShort ? 'look' : 'good to know',
      what:
        `At every cut, and each time it went out, the solar inverter waits ${seconds} s before it ` +
        `gives power; the gateway takes a grid that is back after ${house.gateway.reconnectSeconds} s.` +
        (tooShort ? ` Under ${code} the solar should wait ${least[0]} s at least.` : ''),
      numbers: [
        figure('solar', seconds, 's'),
        figure('grid', house.gateway.reconnectSeconds, 's'),
        ...(least === undefined ? [] : [figure(`least under ${code}`, least[0], 's')]),
      ],
      restsOn:
        'The waits of the house file.' +
        (least === undefined ? '' : ` The least wait under ${code}: ${least[1]}.`),
      toDo: tooShort
        ? 'Read the country setting off the solar inverter and correct the file or the setting.'
        : 'Read both off the equipment; an older inverter may wait 180 s or 300 s.',
    },
  ]
}

/** The night is planned for the coldest one, and for a display that shows too much. */
export const nightWait: Look = (prepared, equipped) => {
  const { house, plant } = equipped
  const { generator, person } = house
  if (generator?.start !== 'by hand' || person === undefined) return []
  const night = nightMinutes(person.from, person.to)
  const waitHours = (night + person.minutes) / 60
  const { month, kw } = hungriestMonth(prepared)
  const placeC = coldestPlaceC(prepared, equipped)
  const drawKw = kw + inverterLossKw(plant, kw) + standingKw(plant, placeC)
  const floor = coldestLoadsOffAt(prepared, equipped)
  const heldHours = (Math.max(0, generator.startAt - floor) * plant.usableKwh) / drawKw
  const bedtime = floor + READING_ERROR + (waitHours * drawKw) / plant.usableKwh
  const lost = !(heldHours >= waitHours)
  return [
    {
      id: 'night-wait',
      grade: lost ? 'mend' : 'good to know',
      what:
        `Somebody has to start the generator. Wanted just after ${person.to}, it waits ` +
        `${short(waitHours)} h; from ${Math.round(100 * generator.startAt)} % the critical loads ` +
        `run for ${short(heldHours)} h in ${monthName(month)} without sun, the battery as cold as it gets.` +
        (lost ? ' They go off before anybody is up.' : ''),
      numbers: [
        figure('longest wait', waitHours, 'h'),
        figure('held from the call', heldHours, 'h'),
        figure('critical loads, mean', kw, 'kW'),
        figure('with losses', drawKw, 'kW'),
        figure('lower limit in the cold', floor),
        figure('charge needed at bedtime', Math.min(1, bedtime)),
      ],
      restsOn:
        'Hours and minutes of the person in the file, the mean of the hungriest month, the coldest ' +
        `hour of the battery, ${Math.round(100 * READING_ERROR)} points for a display that shows too ` +
        'much, comfort loads off.',
      toDo:
        (bedtime > 1
          ? 'No charge lasts the night: an automatic start, or more battery.'
          : `In a cut go to bed with ${Math.ceil(100 * bedtime)} % or more and the comfort loads off, ` +
            'else run the generator first; put that on the board. An automatic start does away with it.') +
        ' Never run it unattended where its exhaust can reach a room.',
    },
  ]
}

/** Minutes of a day in which nobody comes. */
function nightMinutes(from: string, to: string): number {
  const gap = (clockMinute(from) ?? 0) - (clockMinute(to) ?? DAY_MINUTES)
  return (gap + DAY_MINUTES) % DAY_MINUTES
}

/** Month in which the critical loads draw most, and their mean. */
function hungriestMonth({ calendar, demand }: Prepared): { month: number; kw: number } {
  let most = { month: 1, kw: 0 }
  for (let month = 1; month <= 12; month++) {
    const [from, to] = monthRange(calendar, month)
    let sum = 0
    for (let i = from; i < to; i++) sum += demand.criticalKw[i]!
    const kw = sum / (to - from)
    if (kw > most.kw) most = { month, kw }
  }
  return most
}
