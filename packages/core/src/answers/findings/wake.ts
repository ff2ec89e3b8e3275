// Who or what can bring back an island whose stack ran empty.

import { isOnIsland } from '../../house/phases.js'
import { type Finding, figure, type Grade, type Look } from './finding.js'

const STAYS = {
  collapses: 'An empty battery takes the island with it',
  holds: 'Nearly empty, the island drops its loads and holds on idle draw for a while',
  retries: 'An empty island forms again for some minutes at set times of the day',
} as const

export const wakesEmpty: Look = (_, { house, rules }) => {
  const { generator, inverter, arrays } = house
  const ways: string[] = []
  if (rules.wakesOnSun) ways.push('DC-coupled solar')
  if (rules.wakesOnGenerator) {
    const byItself = generator?.start === 'automatic'
    ways.push(`the generator, ${byItself ? 'which starts by itself' : 'where somebody starts it'}`)
  }
  if (rules.wakesOnPerson) {
    ways.push('somebody who forms the island without its loads once the sun is there')
  }
  const hasAc = arrays.some(
    ({ inverter }) => inverter !== undefined && isOnIsland(house, inverter.phase),
  )
  if (hasAc && inverter.whenEmpty !== 'collapses') {
    ways.push('AC-coupled solar, while the island still stands')
  }
  const grade: Grade =
    ways.length === 0
      ? 'mend'
      : !rules.wakesOnGenerator && !rules.wakesOnSun
        ? 'look'
        : 'good to know'
  const finding: Finding = {
    id: ways.length === 0 ? 'nothing-wakes' : 'what-wakes',
    grade,
    what:
      `${STAYS[inverter.whenEmpty]}. ` +
      (ways.length === 0
        ? 'Here nothing but the grid can bring it back: AC-coupled solar needs an island to feed.'
        : `It can come back through ${ways.join('; ')}; or the grid.` +
          (hasAc && !rules.wakesOnSun ? ' AC-coupled solar alone cannot wake it.' : '')) +
      (generator !== undefined && !rules.wakesOnGenerator
        ? ' The generator is not let in by an inverter that is asleep: it has to run before that.'
        : ''),
    numbers: [figure('ways beside the grid', ways.length)],
    restsOn:
      'inverter.wakesOn of the house file, by default DC-coupled sun and the generator: common ' +
      'practice, no source; the manual of battery and inverter has the last word.',
    toDo:
      ways.length === 0
        ? 'A generator inlet, a DC-coupled array, or an inverter that drops its loads early and ' +
          'holds; until then switch loads off by hand before it is empty.'
        : 'Try once on site to bring it back from empty, and write the steps on the board.' +
          (generator?.start === 'automatic'
            ? ' The generator needs a starting battery of its own.'
            : ''),
  }
  return [finding]
}
