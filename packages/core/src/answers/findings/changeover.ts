// The gap at the changeover, and at a restart after an overload, against what loads tolerate.

import { toleratedMinutes } from '../../consequence/of-load.js'
import { CP, type Finding, figure, type Look, named, short } from './finding.js'

/** What is planned with whatever the data sheet claims. [ms]; common practice, no source */
const PLAN_MS = 1000
/** An island that an overload brought down forms again after so long. [ms]; the rule book's */
const RESTART_MS = 60000

export const changeoverGap: Look = ({ house }) => {
  const claimedMs = house.gateway.changeoverMs
  const planMs = Math.max(PLAN_MS, claimedMs)
  const within = (from: number, to: number): string[] =>
    house.loads
      .filter((load) => {
        const ms = toleratedMinutes(load) * 60000
        return load.tier === 'critical' && ms >= from && ms < to
      })
      .map((load) => load.name)
  const atChangeover = within(0, planMs)
  const atRestart = within(planMs, RESTART_MS)
  const numbers = [figure('gap claimed', claimedMs, 'ms'), figure('gap planned', planMs, 'ms')]
  const found: Finding[] = []
  if (atChangeover.length > 0) {
    found.push({
      id: 'changeover-gap',
      grade: 'mend',
      what:
        `${named(atChangeover, 6)} must not be off for ${short(planMs / 1000)} s, the gap to plan ` +
        'for each time the house leaves the grid.',
      numbers: [...numbers, figure('loads', atChangeover.length)],
      restsOn:
        `${CP} The claimed gap is the data sheet's; a gap left out in the file counts as none ` +
        'tolerated.',
      toDo:
        'Put a small uninterruptible supply at each, with its own battery, and try it with the ' +
        'main switch; or measure the gap and enter what the load really tolerates.',
    })
  }
  if (atRestart.length > 0) {
    found.push({
      id: 'restart-gap',
      grade: 'look',
      what:
        `${named(atRestart, 6)} bears the changeover, but not the minute the island is off after ` +
        'an overload.',
      numbers: [...numbers, figure('restart after an overload', RESTART_MS / 1000, 's')],
      restsOn: CP,
      toDo: 'A small uninterruptible supply, or nothing on the island that can overload it.',
    })
  }
  return found
}
