// Words of the fold for the electrician.

import { type Finding, type SkyFigures, type SkyKind, skyName } from '@tideover/core'
import type { PageFacts } from '../facts.js'
import { lastsText, lengthText, percentDown } from './numbers.js'

export type EngineeringWords = ReturnType<typeof engineeringWords>

export function engineeringWords({ answer, prepared, winters }: PageFacts) {
  return {
    title: 'For the electrician: all skies, shares and settings',
    skiesTitle: 'How long, by sky',
    skiesLead:
      'Hours over all starts of the month, rounded down; the share is that of the hardest pattern.',
    skyHead: ['Sky', 'Worst', '1 in 20', 'Middle', 'Best', `Lasts ${lengthText(answer.cutHours)}`],
    skyRow: (sky: SkyKind, figures: SkyFigures): string[] => [
      skyName(sky),
      figures.worstHours === null ? '–' : short(figures.worstHours, figures),
      short(figures.p05Hours, figures),
      short(figures.medianHours, figures),
      short(figures.bestHours, figures),
      share(figures.share),
    ],
    patternsTitle: 'Share that lasts to the end, by when it starts',
    patternHead: ['Sky', 'Any minute', '15 to 21 h', 'Windy, dull days'],
    patternRow: (sky: SkyKind, { shareByPattern: by }: SkyFigures): string[] => [
      skyName(sky),
      share(by.any),
      share(by.evening),
      share(by.windy),
    ],
    notes: notes(answer, winters, prepared.house.site.timezone),
    curveTitle: 'Still on after so many hours',
    curveLead: 'Share of all starts of the month.',
    curveAlt: 'Share of starts that still last after so many hours, by sky.',
    skyName,
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
    clearTitle: 'Under a clear sky',
    clearLead: 'The bright end, to compare only: it promises nothing.',
    findingsTitle: 'Findings',
    finding: ({ grade, what, toDo }: Finding): string => `${grade}: ${what} ${toDo}`,
  }
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

function short(hours: number, { horizonHours }: SkyFigures): string {
  return lastsText(hours, horizonHours)
    .replace('more than', 'over')
    .replace(/ hours?| minutes?/, (unit) => (unit.includes('hour') ? ' h' : ' min'))
}

function share(value: number | null): string {
  return value === null ? '–' : percentDown(value)
}
