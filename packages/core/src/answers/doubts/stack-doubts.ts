// Doubts that leave the weather alone: charge at the start, its reading, age, people.

import { withNobody } from '../altered.js'
import { equip, READING_ERROR, type Scenario } from '../scenario.js'
import { AGEING_A_YEAR, yearsTo } from './ageing.js'
import { CP, doubtFigures, type OpenDoubt } from './doubt.js'
import { type Rider, rideAgain } from './rider.js'

/** A doubt and the scenarios at its ends. */
interface Asked extends Omit<OpenDoubt, 'ends'> {
  readonly ends: readonly { readonly at: string; readonly scenario: Scenario }[]
}

/** Rides all of them under one weather. */
export function stackDoubts(rider: Rider): OpenDoubt[] {
  const { prepared, question } = rider
  const asked = [startDoubt(rider), readingDoubt(rider), ageDoubt(rider)]
  const houses = asked.flatMap(({ ends }) =>
    ends.map(({ scenario }) => equip(prepared, { ...question, ...scenario })),
  )
  const { person } = rider.equipped.house
  if (person !== undefined) {
    const alone = { ...prepared, house: withNobody(prepared.house) }
    houses.push(equip(alone, question))
  }
  const ridden = rideAgain(rider, { houses })
  let at = 0
  const doubts = asked.map(
    ({ ends, ...doubt }): OpenDoubt => ({
      ...doubt,
      ends: ends.map((end) => ({ at: end.at, figures: doubtFigures(ridden[at++]!.figures) })),
    }),
  )
  if (person === undefined) return doubts
  const figures = doubtFigures(ridden[at]!.figures)
  return [...doubts, { ...NOBODY, ends: [{ at: 'nobody', figures }] }]
}

const NOBODY = {
  id: 'nobody-home',
  name: 'somebody at home',
  range: 'as the house says, or nobody for the whole cut',
  basis: `absent in 20 of 100 cuts; ${CP}`,
}

function startDoubt({ equipped }: Rider): Asked {
  const { kind } = equipped.startSoc
  const reserve = Math.round(100 * equipped.house.stack.reserve)
  const ends = [
    { at: `reserve, ${reserve} %`, scenario: { startSoc: 'reserve' as const } },
    { at: 'full', scenario: { startSoc: 'full' as const } },
  ].filter(({ scenario }) => scenario.startSoc !== kind)
  return {
    id: 'start',
    name: 'charge at start',
    range: `${reserve} % less ${points(READING_ERROR)} for the reading, to full`,
    basis: 'what ordinary days may take, and what they may leave',
    ends,
  }
}

const READING = [0.1, 0.03] as const

function readingDoubt({ equipped }: Rider): Asked {
  const { value } = equipped.startSoc
  return {
    id: 'reading',
    name: 'display error',
    range: 'shows 3 to 10 points more than there is',
    basis: CP,
    ends: READING.map((error) => ({
      at: `${points(error)} less`,
      scenario: { startSoc: Math.max(0, value - error) },
    })),
  }
}

const OLD = 0.7

function ageDoubt({ equipped }: Rider): Asked {
  const oldest = equipped.health > OLD ? OLD : Math.max(0.3, equipped.health - 0.1)
  const year = Math.round(yearsTo(oldest))
  const ends = [
    { at: `aged to ${Math.round(100 * oldest)} %`, scenario: { health: oldest } },
    { at: 'new', scenario: { health: 1 } },
  ].filter(({ scenario }) => scenario.health !== equipped.health)
  return {
    id: 'age',
    name: 'battery age',
    range: `new, to year ${year} at ${Math.round(100 * AGEING_A_YEAR)} % a year`,
    basis: `a straight line from new; ${CP}, 1-3 % a year`,
    ends,
  }
}

function points(share: number): string {
  return `${Math.round(100 * share)} points`
}
