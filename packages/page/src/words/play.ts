// Words of the form with which a cut is played again.

import type { SkyKind } from '@tideover/core'
import type { Region } from './region.js'

const SKIES: Readonly<Record<SkyKind, string>> = {
  dull: 'dull',
  typical: 'ordinary',
  none: 'no sun (snow on the panels)',
  clear: 'clear all day',
  file: 'as recorded',
}

export type PlayWords = ReturnType<typeof playWords>

export function playWords(region: Region, promise: SkyKind) {
  const asAbove = (sky: SkyKind): string => `${SKIES[sky]}${sky === promise ? ', as above' : ''}`
  return {
    title: `Try ${region.aCut} yourself`,
    lead:
      'Choose when it starts and what is switched on. This page simulates it again, minute by ' +
      'minute, without sending anything anywhere. The battery starts as in the answer above.',
    hardestFirst:
      'The start chosen first is the hardest of that month on a full hour, under that sky.',
    month: 'Month',
    day: 'Day',
    hour: 'Starts at',
    length: 'Lasts',
    sky: 'Sky',
    skyText: asAbove,
    loads: 'Switched on',
    mustStayOn: 'must stay on',
    whileItLasts: 'while it lasts',
    play: `Show this ${region.cut}`,
    working: 'Working it out. This takes a few seconds the first time, and when loads change …',
    failed: 'This browser could not work it out. A newer one may.',
    needsScript:
      'This part needs a browser that may run scripts; everything else on this page stands without.',
    tooLarge:
      'The measured minutes of this house are too many for a page that travels by mail, so that ' +
      `${region.aCut} cannot be played again here. The electrician can trace one.`,
    clear: `Show the ${region.cut} chosen above under a clear sky`,
    under: (from: string, sky: SkyKind): string => `From ${from}, sky: ${SKIES[sky]}.`,
  }
}
