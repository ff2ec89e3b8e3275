// Doubts about sky, solar, cold and load: each is ridden in a weather or with columns of its own.

import type { Place } from '../../house/house.js'
import type { SkyKind } from '../../sky/sky.js'
import { colder, PLACES, withGrowth, withoutSolar, withPlace } from '../altered.js'
import type { RideQuestion } from '../ride-question.js'
import { skyName } from '../words.js'
import { CP, type DoubtEnd, doubtFigures, type OpenDoubt } from './doubt.js'
import { type Change, DOUBT_YEARS, type Rider, rideAgain, skyOf } from './rider.js'

/** The work of a doubt; done when it is called. */
export type Work = () => OpenDoubt

export function weatherDoubts(rider: Rider): Work[] {
  const hasSolar = rider.prepared.arrays.length > 0
  return [
    ...(hasSolar ? [() => skyDoubt(rider), () => solarDoubt(rider)] : []),
    () => growthDoubt(rider),
    () => placeDoubt(rider),
    () => longerDoubt(rider),
  ]
}

function end(rider: Rider, at: string, change: Change): DoubtEnd {
  return { at, figures: doubtFigures(rideAgain(rider, change)[0]!.figures) }
}

const SKIES: readonly SkyKind[] = ['none', 'dull', 'typical', 'clear']

function skyDoubt(rider: Rider): OpenDoubt {
  const { prepared, question } = rider
  const { sky = 'dull', winters = 10, years = DOUBT_YEARS } = question
  return {
    id: 'sky',
    name: 'sky',
    range: 'no sun at all, dull, typical, clear',
    basis: `dull and no sun: once in ${winters} winters; typical: ${years} synthetic years`,
    ends: SKIES.filter((kind) => kind !== sky).map((kind) =>
      end(rider, skyName(kind), { monthSky: skyOf(prepared, question, kind) }),
    ),
  }
}

function solarDoubt(rider: Rider): OpenDoubt {
  return {
    id: 'solar-gone',
    name: 'island solar',
    range: 'as the house says, or never back after the cut begins',
    basis: `an old inverter whose answer nobody knows; ${CP}`,
    ends: [end(rider, 'never back', { prepared: withoutSolar(rider.prepared) })],
  }
}

const GROWTH = [0.4, 0.15] as const

function growthDoubt(rider: Rider): OpenDoubt {
  return {
    id: 'load-growth',
    name: 'growth of loads',
    range: '0 to 40 %, 15 % to be planned with',
    basis: CP,
    ends: GROWTH.map((growth) =>
      end(rider, `${Math.round(100 * growth)} % more`, {
        prepared: withGrowth(rider.prepared, growth),
      }),
    ),
  }
}

const COLDER_K = 5

function placeDoubt(rider: Rider): OpenDoubt {
  const { prepared, monthSky } = rider
  const at = PLACES.indexOf(prepared.house.stack.place)
  const near = [PLACES[at + 1], PLACES[at - 1]].filter((place): place is Place => place != null)
  return {
    id: 'place',
    name: 'battery cold',
    range: `the next colder and warmer place; air ${COLDER_K} K colder`,
    basis: CP,
    ends: [
      end(rider, `air ${COLDER_K} K colder`, {
        monthSky: { ...monthSky, sky: colder(monthSky.sky, COLDER_K) },
      }),
      ...near.map((place) =>
        end(rider, place, {
          prepared: withPlace(prepared, place),
        }),
      ),
    ],
  }
}

function longerDoubt(rider: Rider): OpenDoubt {
  const { prepared, question } = rider
  const longer: RideQuestion = { ...question, hours: 2 * question.hours }
  const monthSky = skyOf(prepared, longer, question.sky ?? 'dull')
  return {
    id: 'longer-cut',
    name: 'length of the cut',
    range: `${question.hours} to ${longer.hours} h`,
    basis: 'twice as long as asked for',
    ends: [end(rider, `${longer.hours} h`, { question: longer, monthSky })],
  }
}
