// Who or what starts a generator, resets an inverter or brings a dark island back, and when.

import { localTime } from '../axis/calendar.js'
import { NEVER } from '../island/columns.js'
import { Event } from '../island/state.js'
import { isInCans, personWords, type Scene } from './scene.js'

/** Minute in which somebody will have tended the generator; null where nobody is there. */
export function tendedAt(scene: Scene, i: number): number | null | undefined {
  // An automatic set needs somebody only where its tank is empty.
  if (scene.house.generator?.start !== 'by hand' && !isInCans(scene, i)) return undefined
  const at = scene.compiled.columns.personAt[i]!
  return at === NEVER ? null : at
}

/** Who tends the generator; nothing for one that starts itself. */
export function whoStarts(scene: Scene, i: number): string {
  const { trace, house, calendar } = scene
  const at = tendedAt(scene, i)
  if (at === undefined) return ''
  if (at === null) return ' Nobody is there to tend it.'
  return ` Somebody is called (${personWords(house)}) and will have tended it at ${localTime(calendar, trace.from + at)}.`
}

/** What brings a dark island back. */
export function whatHelps(scene: Scene, i: number): string {
  return scene.trace.states[i] === 'off, overload' ? whoResets(scene, i) : whatWakes(scene, i)
}

/**
 * Minute in which somebody will have reset the inverter that has spent its tries after an overload:
 * null where nobody does, undefined where it tries by itself or is off for another reason.
 */
export function resetAt(scene: Scene, i: number): number | null | undefined {
  if (scene.trace.states[i] !== 'off, overload' || !hasSpentTries(scene, i)) return undefined
  const at = scene.compiled.columns.personAt[i]!
  return at === NEVER ? null : at
}

function hasSpentTries({ trace, compiled }: Scene, i: number): boolean {
  let tries = 1
  while (tries <= i && (trace.events[i - tries]! & Event.overload) !== 0) tries++
  return tries > compiled.rules.retries
}

/** After an overload the inverter tries by itself; then somebody has to reset it. */
function whoResets(scene: Scene, i: number): string {
  const { trace, house, calendar } = scene
  let next = i + 1
  while (next < trace.n && (trace.events[next]! & (Event.loadsBack | Event.gridReturns)) === 0) {
    next++
  }
  if (next === i + 1 && next < trace.n) return ' The inverter tries again in a minute.'
  if (!hasSpentTries(scene, i)) {
    if (next >= trace.n) return ' It has not come back by the end.'
    const comes = (trace.events[next]! & Event.overload) === 0 ? 'comes back' : 'tries again'
    return ` It ${comes} at ${localTime(calendar, trace.from + next)}.`
  }
  const spent = ' It has tried three times and waits to be reset.'
  if (house.person === undefined)
    return `${spent} Nobody is named who could; the grid brings it back.`
  const when =
    next < trace.n && (trace.events[next]! & Event.loadsBack) !== 0
      ? ` and will have done it at ${localTime(calendar, trace.from + next)}`
      : ''
  return `${spent} Somebody is called (${personWords(house)})${when}.`
}

function whatWakes(scene: Scene, i: number): string {
  const { house, calendar, trace, compiled } = scene
  const { rules, columns } = compiled
  if (rules.wakesOnSun) return ' The sun on the DC side can wake the battery.'
  const failed = rules.generator !== null && trace.events.subarray(0, i + 1).some(isFailure)
  const hasFuel = trace.fuelL[i]! > 0 && (house.person !== undefined || !isInCans(scene, i))
  const helpers =
    rules.wakesOnGenerator && hasFuel && !failed ? 'the grid or the generator' : 'the grid'
  const sun = rules.solar.length > 0 ? ' Sunshine alone will not: nothing forms a grid for it.' : ''
  if (!rules.wakesOnPerson) return ` Only ${helpers} brings it back.${sun}`
  const at = columns.wakeAt[i]!
  return at === NEVER
    ? ` Somebody is called (${personWords(house)}), but has no sun to start with.${sun}`
    : ` Somebody is called (${personWords(house)}) and forms it at ${localTime(calendar, trace.from + at)}, with the sun there.`
}

function isFailure(events: number): boolean {
  return (events & (Event.generatorDoesNotStart | Event.generatorFails)) !== 0
}
