// Words of the fold for the electrician.

import { DULL_YEARS, type Finding, type SkyFigures, skyName } from '@tideover/core'
import type { PageFacts, Spread } from '../facts.js'
import { TYPICAL_YEARS } from '../replay/carry.js'
import { assumedValue } from './defaults.js'
import { grouped, lengthText, percentDown, shortHours } from './numbers.js'

export type EngineeringWords = ReturnType<typeof engineeringWords>

export function engineeringWords({ answer, prepared, winters, carried }: PageFacts) {
  const { warnings, defaults } = answer
  return {
    title: 'For the electrician: all skies, shares and settings',
    skiesTitle: 'How long, by sky',
    skiesLead:
      'Whole hours, rounded down, over all starts of the month: the shortest, the longest, and how ' +
      'far 1 start in 20, 1 in 4 and so on come at most. With + it was followed no further.',
    skyHead: ['Sky', 'Worst', '1 in 20', '1 in 4', 'Middle', '3 in 4', '19 in 20', 'Best'],
    skyRow: ({ worstHours, bestHours }: SkyFigures, { hours, horizonHours }: Spread): string[] => [
      worstHours === null ? '–' : shortHours(worstHours, horizonHours),
      ...hours.map((each) => shortHours(each, horizonHours)),
      shortHours(bestHours, horizonHours),
    ],
    patternsTitle: `Share that lasts ${lengthText(answer.cutHours)}, by when it starts`,
    patternHead: ['Sky', 'Any minute', '15 to 21 h', 'Windy, dull days'],
    patternRow: ({ shareByPattern: by }: SkyFigures): string[] => [
      share(by.any),
      share(by.evening),
      share(by.windy),
    ],
    notes: notes(answer, winters, prepared.house.site.timezone),
    curveTitle: 'Still on after so many hours',
    curveLead: 'Share of all starts of the month.',
    curveAlt: 'Share of starts that still last after so many hours, by sky.',
    skyName,
    doubtsTitle: 'To know about this answer',
    doubts: warnings,
    defaultsTitle: `What nobody gave, so that a usual value was taken (${defaults.length})`,
    defaultsNote: 'A data sheet or a look in the house is better than each of these.',
    defaults: defaults.map(({ path, value }) => assumedValue(prepared.house, path, value)),
    settingsTitle: 'Asked',
    settings: Object.entries({
      month: answer.month,
      'cut [h]': answer.cutHours,
      modules: answer.modules,
      health: answer.health,
      'synthetic years': answer.years,
      winters,
      seed: answer.seed,
    }).map(([name, value]) => `${name} ${value}`),
    carries: carriesText(carried),
    clearTitle: 'Under a clear sky',
    clearLead: 'The bright end, to compare only: it promises nothing.',
    findingsTitle: 'Findings',
    finding: ({ grade, what, toDo }: Finding): string => `${grade}: ${what} ${toDo}`,
  }
}

/** What the cuts that are played on the page rest on. */
function carriesText({ meters, outputs }: PageFacts['carried']): string {
  const readings = [...meters, ...outputs].reduce((sum, [, { kw }]) => sum + kw.length, 0)
  const measured = readings === 0 ? '' : `, the ${grouped(readings)} readings of its measured files`
  return (
    `To play a cut again this page carries the house as it was entered${measured}, and for each day ` +
    `of the year which of ${DULL_YEARS} synthetic years it lives under a dull sky or without sun, and ` +
    `which of ${TYPICAL_YEARS} is the middle one. All else is simulated anew, nothing is looked up.`
  )
}

function notes(answer: PageFacts['answer'], winters: number, zone: string): string[] {
  const { typical } = answer.skies
  const years =
    typical?.shareLow == null || typical.shareHigh == null
      ? []
      : [
          `${answer.years} synthetic years pin the typical share to ${percentDown(typical.shareLow)} to ` +
            `${Math.ceil(100 * typical.shareHigh)} %; the climate is not known that well.`,
        ]
  const bright =
    answer.bright.share === null
      ? []
      : [
          `Bright case (${answer.bright.conditions}): ${percentDown(answer.bright.share)} last to the end.`,
        ]
  return [
    `Dull: as dark as 1 such month in ${winters} brings, ranked over the days of the cut; after them that winter goes on.`,
    ...years,
    ...bright,
    `Clock of ${zone}.`,
  ]
}

function share(value: number | null): string {
  return value === null ? '–' : percentDown(value)
}
