// Paper 1: the card on the board, read at arm's length by torchlight.

import {
  daysOfCut,
  type House,
  type LoadRow,
  monthName,
  READING_ERROR,
  type RideAnswer,
  type SkyFigures,
  skyWords,
} from '@tideover/core'
import { harderSky } from '../words/hardest.js'
import { loadsOffWords } from '../words/loads-off.js'
import { generatorPart } from './generator-part.js'
import { whenDark } from './gone-dark.js'
import { cutName, type Html, line, list, sheet, someNames, tag, textLength } from './html.js'
import { equippedOf, frameOf, type PapersInput, wordsOf } from './input.js'
import { gapSaid, hoursSaid, short, wholePercent } from './numbers.js'
import { comfortSteps } from './steps.js'

/** Names that fit on the card in its large type. */
const MOST_NAMES = 6
const MOST_SIGNS = 24
/** Type as large as the text allows. */
const SIZES = [
  { upTo: 1500, name: 'largest' },
  { upTo: 1850, name: 'large' },
  { upTo: 2700, name: 'plain' },
  { upTo: Number.POSITIVE_INFINITY, name: 'small' },
] as const

/** What stays on, for how long, what to do: for whoever stands in the dark. */
export function cutCard(input: PapersInput): string {
  const { aCut, board } = wordsOf(input)
  const frame = frameOf(input, 1, `In ${aCut}`, `Keep at the ${board}`)
  const body = [
    howLong(input),
    tag('div.two', [staysOn(input), goesOff(input)]),
    switchOff(input),
    tag('div.two', [whenDark(input), generatorPart(input)]),
    whoToCall(input),
    cautions(input),
  ]
  const { name } = SIZES.find(({ upTo }) => textLength(body) <= upTo)!
  return sheet(`cut-card.${name}`, frame, body)
}

function howLong(input: PapersInput): Html {
  const { prepared, ride } = input
  const { aCut } = wordsOf(input)
  const promised = ride.skies[ride.promise] as SkyFigures
  const hardest = hardestHours(input)
  const plan = hardest?.hours ?? promised.worstHours ?? promised.p05Hours
  const say = (hours: number): string => hoursSaid(hours, promised.horizonHours)
  const least =
    hardest !== null
      ? `No start that was looked at, in any month, lasts less${inMonth(hardest.month, ride)}`
      : promised.worstHours === null
        ? 'At least as long in 19 of 20 such cuts'
        : `No start in such a ${monthName(ride.month)} lasts less`
  const many = hardest === null ? 'Half of all starts' : `In ${monthName(ride.month)} half`
  const half = `${many} last ${say(promised.medianHours)}${promised.medianHours < promised.horizonHours ? ' or longer' : ''}`
  return tag('div.plan', [
    tag('p.big', plan < 1 / 60 ? 'It may not last at all' : `Plan on ${say(plan)}`),
    tag('p', plan < 1 / 60 ? `${half}.` : `${least}. ${half}.`),
    tag('p.how', `Counted for ${aCut} in ${conditions(prepared.house, ride, promised)}.`),
    ...firstToMend(input),
  ])
}

/**
 * The least of all months, for the card hangs there all year, and of a sky that is harder; null
 * where not all are known.
 */
function hardestHours({ months, ride }: PapersInput): { hours: number; month: number } | null {
  const worst = months.map(({ figures }) => figures.worstHours)
  if (worst.length < 12 || worst.includes(null)) return null
  const least = Math.min(...(worst as number[]))
  const harder = harderSky(ride)?.worstHours ?? Infinity
  if (harder < least) return { hours: harder, month: ride.month }
  return { hours: least, month: months[worst.indexOf(least)]!.month }
}

/** Names the month of the least, where it is another than the one that is counted. */
function inMonth(month: number, ride: RideAnswer): string {
  return month === ride.month ? '' : ` (the least starts in ${monthName(month)})`
}

/** A card that promises what does not hold yet is not to hang there. */
function firstToMend({ check }: PapersInput): Html[] {
  const open = check.findings.filter(({ grade }) => grade === 'mend').length
  if (open === 0) return []
  const what = open === 1 ? '1 thing is' : `${open} things are`
  return [tag('p.how', tag('b', `Hang it up only once ${what} put right: see the page.`))]
}

function conditions(house: House, ride: RideAnswer, { winters }: SkyFigures): string {
  const spell =
    winters === undefined || ride.promise === 'typical'
      ? null
      : { winters, days: daysOfCut(ride.cutHours) }
  const { kind, value } = ride.startSoc
  const start =
    kind === 'reserve'
      ? `a battery at its reserve of ${wholePercent(value)} (less ${short(100 * READING_ERROR)} points)`
      : `a battery at ${wholePercent(value)}`
  const age = ride.health === 1 ? 'new' : `aged to ${wholePercent(ride.health)}`
  const set = house.generator === undefined ? '' : `, ${generatorWords(house.generator)}`
  const modules = `${ride.modules} module${ride.modules === 1 ? '' : 's'}`
  return (
    `${monthName(ride.month)}, ${skyWords(ride.promise, spell, ride.month)}, ${start}, ` +
    `${age}, ${modules}${set}`
  )
}

function generatorWords({ startFailsShare }: NonNullable<House['generator']>): string {
  if (startFailsShare === 0) return 'a generator that starts when asked'
  return `a generator that does not start ${short(100 * startFailsShare)} times of 100`
}

function staysOn({ ride, loads }: PapersInput): Html {
  const promised = ride.skies[ride.promise] as SkyFigures
  const rows = loads.loads.filter(({ tier }) => tier === 'critical')
  const names = rows.map(({ name, toleratesMinutes }) => {
    const first = promised.loads.some((load) => load.name === name && load.firstToFail)
    return `${cutName(name, MOST_SIGNS)}: ${gapSaid(toleratesMinutes)}${first ? ' (first to give out)' : ''}`
  })
  return tag('div', [tag('h3', 'Stays on'), list(someNames(names, MOST_NAMES, 80))])
}

function goesOff(input: PapersInput): Html {
  const rows = input.loads.loads
  const atOnce = rows.filter(({ tier }) => tier === 'gridOnly').map(({ name }) => name)
  const { at } = loadsOffWords(input.prepared, equippedOf(input), wholePercent)
  const steps = comfortSteps(input)
  const shown = steps.length > 4 ? [...steps.slice(0, 3), steps.at(-1)!] : steps
  const items = [
    ...(atOnce.length === 0 ? [] : [`At once: ${someNames(atOnce, 3, 20).join(', ')}`]),
    ...shown.map(
      ({ names, dropBelow, returnAt }) =>
        `Below ${wholePercent(dropBelow)}: ${someNames(names, 4, 20).join(', ')} ` +
        `(back above ${wholePercent(returnAt)})`,
    ),
    `At ${at}: everything`,
  ]
  return tag('div', [tag('h3', 'Goes off, by battery charge'), list(items)])
}

/** What takes most goes first; among the comfort loads only. */
function switchOff({ loads }: PapersInput): Html {
  const comfort = loads.loads.filter(({ tier }) => tier === 'comfort')
  const most = (row: LoadRow): number => Math.max(row.januaryKwhADay, row.julyKwhADay)
  const first = [...comfort]
    .sort((a, b) => most(b) - most(a))
    .slice(0, 4)
    .map((row) => `${cutName(row.name, MOST_SIGNS)} (${short(most(row), 1)} kWh a day)`)
  const peak = [...comfort].sort((a, b) => b.mostKw - a.mostKw)[0]
  const text =
    first.length === 0
      ? 'Only what must stay on is on the battery. Leave off whatever is not needed now.'
      : `${first.join(', ')}. Largest at one moment: ${cutName(peak!.name, MOST_SIGNS)}, ${short(peak!.mostKw, 1)} kW.`
  return tag('div', [tag('h3', 'Switch off first, at once and by hand'), tag('p', text)])
}

function whoToCall(input: PapersInput): Html {
  const { operator, dial } = wordsOf(input)
  const call = dial === '' ? '' : `: dial ${dial}`
  return tag('div', [
    tag('h3', 'Who to call'),
    tag('div.lines', [
      line(`${operator}${call}`),
      line('electrician'),
      line('neighbour'),
      line('emergency services'),
    ]),
  ])
}

function cautions({ ride }: PapersInput): Html {
  return tag('div.cautions', [tag('h3', 'Caution'), list(ride.cautions.slice(0, -1))])
}
