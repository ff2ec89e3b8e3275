// A warmer place for the stack, where the cold may keep it from being charged.

import type { Place } from '../../house/house.js'
import type { Prepared } from '../../series/prepare.js'
import { PLACES, withPlace } from '../altered.js'
import type { Change } from './change.js'

/** In words that follow `the battery in`. */
const IN: Readonly<Record<Place, string>> = {
  house: 'the house',
  'attached garage': 'an attached garage',
  shed: 'a shed',
}

/** The next warmer place; nothing for a stack that stands in the house. */
export function placeChange(prepared: Prepared): Change[] {
  const { place } = prepared.house.stack
  const warmer = PLACES[PLACES.indexOf(place) - 1]
  if (warmer === undefined) return []
  return [
    {
      kind: 'place',
      what: `the battery in ${IN[warmer]}, not in ${IN[place]}`,
      price: null,
      givesUp: null,
      warnings: [
        'Where a battery may stand (fire, ways out, sleeping rooms) is for the local rules and the ' +
          'maker to say.',
      ],
      prepared: () => withPlace(prepared, warmer),
    },
  ]
}
