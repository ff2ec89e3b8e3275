// Words of the answer and of what stands around it: loads, stacks, assumptions.

import { type LoadFigures, monthName, READING_ERROR } from '@tideover/core'
import type { PageFacts, StackFacts } from '../facts.js'
import { harderSky, harderSkyWords, hardestMonthWords, hardestWords } from './hardest.js'
import { coldText } from './keeps.js'
import {
  casesText,
  counted,
  gapText,
  grouped,
  lastsText,
  lengthText,
  listed,
  percent,
} from './numbers.js'
import type { Region } from './region.js'

export type AnswerWords = ReturnType<typeof answerWords>

export function answerWords(region: Region, facts: PageFacts) {
  const { answer, promised, equipped } = facts
  const { house } = equipped
  const month = monthName(answer.month)
  return {
    pageTitle: `${answer.house}: how long it lasts in ${region.aCut}`,
    invented: 'This house is an invented example.',
    headline: headline(region, facts),
    conditionsTitle: 'This holds under these conditions',
    conditions: {
      Sky: skyCondition(facts, month),
      'Battery at the start': startCondition(facts),
      'Age of the battery': ageCondition(facts),
      [`Off in ${region.aCut}`]: offCondition(facts),
      'Runs only while the charge lasts': listed(namesOf(facts, 'comfort')) || 'nothing',
      ...(house.generator === undefined ? {} : { Generator: generatorCondition(facts) }),
    },
    countedOn: countedOn(facts),
    designed:
      'The house is designed to hold as said under these conditions. It is a simulation, no guarantee.',
    hardest: [harderSkyWords(facts), hardestMonthWords(facts)]
      .filter((part) => part !== '')
      .join(' '),
    first: firstToMend(facts),
    firstLink: 'What the electrician still has to see to',
    loadsTitle: 'What stays on',
    loadsLead:
      `Each of these was followed from every minute of ${month} at which ${region.aCut} may start, ` +
      'under the sky above.',
    loadHead: ['Load', 'May be off for', 'On for, at worst', 'On for, middle case'],
    loadRow: (load: LoadFigures): string[] => [
      load.name,
      gapText(load.toleratesMinutes),
      load.worstHours === null ? '–' : lastsText(load.worstHours, promised.horizonHours),
      lastsText(load.medianHours, promised.horizonHours),
    ],
    firstOut: 'usually the first to give out',
    keepsLead: 'How long these may be off follows from what they keep:',
    keeps: ({ name, toleranceBasis }: LoadFigures): string => {
      const holdOver = house.loads.find((load) => load.name === name)?.holdOver
      return `${name}: ${holdOver === undefined ? `${toleranceBasis}.` : coldText(holdOver)}`
    },
    middleTitle: `One ${month} ${region.cut}, hour by hour`,
    middleLead: middleLead(region, facts, month),
    stacksTitle: 'More or fewer battery modules',
    stacksLead: `The same ${region.cut} of ${lengthText(answer.cutHours)}, under the same conditions.`,
    stackHead: [
      'Battery',
      'Price',
      'At worst',
      'Middle case',
      `Lasts ${lengthText(answer.cutHours)}`,
    ],
    stackRow: (stack: StackFacts): string[] => [
      `${counted(stack.modules, 'module')}${stack.isPresent ? ' (as planned)' : ''}`,
      stack.price === null ? 'not given' : grouped(stack.price),
      stack.figures.worstHours === null
        ? '–'
        : lastsText(stack.figures.worstHours, stack.figures.horizonHours),
      lastsText(stack.figures.medianHours, stack.figures.horizonHours),
      `in ${casesText(stack.figures.share ?? 0)}`,
    ],
    moreIsLess: `More modules do not always last longer here: a larger battery runs low at another hour, at ${
      house.generator?.start === 'by hand'
        ? 'which the sun or whoever starts the generator may be away.'
        : 'which the sun may be away, or more may be on than it carries.'
    }`,
    pricesNote: 'Prices are of the modules alone, as the electrician entered them.',
  }
}

function headline(region: Region, facts: PageFacts): string {
  const { answer, promised } = facts
  const { worstHours, medianHours, horizonHours, share } = promised
  const length = lengthText(answer.cutHours)
  const lasts = (hours: number): string => lastsText(hours, horizonHours)
  const sky = answer.promise === 'none' ? 'without any sun' : 'under a dull sky'
  const start = `In ${region.aCut} of ${length} in ${monthName(answer.month)}, ${sky}, what must stay on`
  if (share === 1) {
    const harder = harderSky(answer)
    const but = harder === null ? '' : ' Colder days under another sky are harder: see below.'
    return `${start} stays on to the end, whenever it starts: even at worst it lasts ${lasts(worstHours ?? answer.cutHours)}.${but}`
  }
  const worst = worstHours === null ? '' : `${lasts(worstHours)} at worst and `
  return (
    `${start} lasts ${worst}${lasts(medianHours)} in the middle case; ${hardestWords(promised)}it ` +
    `lasts to the end in ${casesText(share ?? 0)}.`
  )
}

/** Stands behind the answer wherever it is quoted. */
function countedOn({ answer, equipped }: PageFacts): string {
  const { kind, value } = answer.startSoc
  const charge = kind === 'full' ? 'full' : `charged to ${percent(value)}`
  const age = answer.health === 1 ? 'new' : `worn to ${percent(answer.health)}`
  const off = equipped.house.loads.filter(({ tier }) => tier === 'gridOnly')
  const names = listed(off.map(({ name }) => name))
  const without =
    off.length === 0
      ? []
      : [names.length <= MOST_SIGNS ? `${names} off` : `${counted(off.length, 'load')} off`]
  const { generator } = equipped.house
  const set =
    generator === undefined
      ? []
      : [
          generator.start === 'by hand'
            ? 'somebody to start the generator'
            : 'the generator starting by itself',
        ]
  return `Counted with a battery ${charge} and ${age}${[...without, ...set].map((part) => `; ${part}`).join('')}`
}

/** Names that an opening sentence has room for. */
const MOST_SIGNS = 60

/** What has to be put right before the answer holds. */
function firstToMend({ findings }: PageFacts): string {
  const count = findings.filter(({ grade }) => grade === 'mend').length
  if (count === 0) return ''
  return count === 1
    ? 'One thing has to be put right before this holds:'
    : `${count} things have to be put right before this holds:`
}

function skyCondition({ answer, winters }: PageFacts, month: string): string {
  const days = Math.max(1, Math.ceil(answer.cutHours / 24))
  const length = days === 1 ? 'a day' : `${days} days`
  return answer.promise === 'none'
    ? `no sun at all, and ${length} as cold as 1 ${month} in ${winters} brings`
    : `dull: ${length} as dark as 1 ${month} in ${winters} brings`
}

function startCondition({ answer }: PageFacts): string {
  const { kind, value } = answer.startSoc
  if (kind === 'full') return 'full'
  if (kind === 'share') return `${percent(value)} charged`
  return (
    `${percent(value)} charged, the reserve that ordinary days leave alone; counted as ` +
    `${percent(Math.max(0, value - READING_ERROR))}, because a display may show too much`
  )
}

function ageCondition({ answer }: PageFacts): string {
  const modules = counted(answer.modules, 'module')
  return answer.health === 1
    ? `new, ${modules}`
    : `worn to ${percent(answer.health)} of what it held when new, ${modules}`
}

function offCondition(facts: PageFacts): string {
  return listed(namesOf(facts, 'gridOnly')) || 'nothing: every load is on the battery'
}

function generatorCondition({ answer, equipped }: PageFacts): string {
  const bare = answer.withoutGenerator
  const { start, startFailsShare = 0 } = equipped.house.generator ?? {}
  const who =
    start === 'by hand'
      ? 'somebody starts it when the battery runs low, in the hours said below'
      : 'it starts by itself when the battery runs low'
  const how =
    startFailsShare === 0
      ? `${who}${start === 'by hand' ? '' : ', and does start'}`
      : `${who}; ${percent(startFailsShare)} of its starts are taken to fail`
  if (bare === null) return how
  const worst =
    bare.worstHours === null ? '' : ` and ${lastsText(bare.worstHours, bare.horizonHours)} at worst`
  return `${how}; without it ${lastsText(bare.medianHours, bare.horizonHours)} in the middle case${worst}`
}

function middleLead(
  region: Region,
  { answer, middle, prepared }: PageFacts,
  month: string,
): string {
  const sky = answer.promise === 'none' ? 'without any sun' : 'under the dull sky'
  const shown = new Date(prepared.calendar.startMs + middle.trace.from * 60_000)
  const when = shown.toLocaleString('en-GB', {
    ...{ day: 'numeric', month: 'long', hour: '2-digit', minute: '2-digit' },
    timeZone: prepared.calendar.zone,
  })
  return (
    `A middle case: of all starts in ${month} ${sky}, about half last longer than ` +
    `this one and half less long. ${capital(region.theCut)} begins on ${when}.`
  )
}

export function namesOf(
  { equipped }: PageFacts,
  tier: 'critical' | 'comfort' | 'gridOnly',
): string[] {
  return equipped.house.loads.filter((load) => load.tier === tier).map(({ name }) => name)
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
