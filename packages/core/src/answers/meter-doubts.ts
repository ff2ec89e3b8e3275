// What makes the answer of a metered house doubtful, said before it.

import { listOfMonths, monthName } from '../axis/calendar.js'
import type { MeteredGround } from '../load/metered.js'
import type { Prepared } from '../series/prepare.js'

/** The darkest third of the year, in the north and in the south. */
const WINTER = { north: [11, 12, 1, 2], south: [5, 6, 7, 8] } as const

/**
 * @param month  the one asked about, 1..12; null where the whole year is
 */
export function meterDoubts({ house, demand }: Prepared, month: number | null): string[] {
  const winter: readonly number[] = WINTER[house.site.latitudeDeg < 0 ? 'south' : 'north']
  return demand.grounds.flatMap((ground) => [
    ...netDoubt(ground),
    ...clockDoubt(ground),
    ...seasonDoubt(ground, month, winter),
  ])
}

/** A file of another place: its evenings are not this house's. */
function clockDoubt({ name, otherClock }: MeteredGround): string[] {
  if (otherClock === 0) return []
  const [hours, way] = [Math.abs(otherClock), otherClock > 0 ? 'late' : 'early']
  return [
    `${name}: the file's own clock is ${hours} h off that of the house, so its evenings land ${hours} h ` +
      `${way}. Is it a file of this house?`,
  ]
}

function netDoubt({ name, looksNet, countsImport }: MeteredGround): string[] {
  if (looksNet === null && !countsImport) return []
  const why = looksNet ?? 'its column is named for what is taken from the grid'
  return [
    `${name}: its file looks like a meter at the grid with solar behind it: ${why}. Then it ` +
      'shows less than the house uses, and the house lasts less long than this answer says. Give a ' +
      'reading of the consumption, or import and export with a log of the array; if the record is ' +
      'older than an array, name that array in beforeArrays.',
  ]
}

function seasonDoubt(
  { name, days, monthsWithout, isScaled }: MeteredGround,
  month: number | null,
  winter: readonly number[],
): string[] {
  const scaled = isScaled ? ', scaled by a standard profile,' : ''
  const stand =
    days === 1
      ? `1 recorded day of another month${scaled} stands in`
      : `${days} recorded days of other months${scaled} stand in`
  if (month !== null && monthsWithout.includes(month)) {
    return [
      `${name}: its meter file has no day near most of ${monthName(month)}, the month asked about; ` +
        `${stand}, which may be far off. A record of that month is better ground.`,
    ]
  }
  const dark = winter.filter((each) => monthsWithout.includes(each))
  if (dark.length === 0 || (month !== null && winter.includes(month))) return []
  const part = dark.length < winter.length ? 'part of ' : ''
  return [
    `${name}: its meter file lacks ${part}the winter: no day near most of ${listOfMonths(dark)}; ${stand}, ` +
      'and most houses use more in winter. A record of the winter is better ground.',
  ]
}
