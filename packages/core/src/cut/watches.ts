// What no single event tells: sun in vain, a stack gone flat, one too cold to charge.
//
// Each looks at every minute in turn and tells what it sees.

import { solarGroups } from '../house/solar-groups.js'
import { solarKw } from '../island/solar-columns.js'
import { Event } from '../island/state.js'
import type { Tell } from './event-line.js'
import { dayAt, kw, type Scene, SUN_KW } from './scene.js'

const FLAT = 'Some need a charger or their maker then, whatever comes back.'

const WHY = 'a solar inverter needs a grid to follow, and the island that could give it one is off.'

/** The first sun of each day that a dark, empty island cannot use. */
export function sunInVain(scene: Scene, tell: Tell): (i: number) => void {
  const { trace, house, compiled } = scene
  const all = (1 << compiled.rules.solar.length) - 1
  let told = -1
  return (i) => {
    if (trace.states[i] !== 'off, empty' || compiled.rules.wakesOnSun) return
    const day = dayAt(scene, i)
    if (day === told) return
    // What was there while somebody had it formed was not in vain.
    if ((trace.events[i]! & Event.putAway) !== 0) told = day
    if (day === told) return
    const sunKw = solarKw(compiled.window, all, i)
    if (!(sunKw >= SUN_KW)) return
    told = day
    const names = solarGroups(house).flatMap((group) => group.names)
    const text = `The sun gives ${kw(sunKw)} on ${names.join(', ')}, and nothing happens: ${WHY}`
    tell(i, { id: 'sun-in-vain', text, names })
  }
}

/** A dark stack that its own electronics have drained to nothing. */
export function goesFlat({ trace, compiled }: Scene, tell: Tell): (i: number) => void {
  return (i) => {
    const isDark = trace.states[i] === 'off, empty' || trace.states[i] === 'off, overload'
    if (!isDark || trace.storedKwh[i] !== 0 || !(trace.startStoredKwh[i]! > 0)) return
    const watts = Math.round(1000 * compiled.standingKw(i))
    const text = `The battery is flat: its own electronics and heater (${watts} W) have drained it. ${FLAT}`
    tell(i, { id: 'battery-flat', text })
  }
}

/** The first minute of each day in which a generator runs and the stack is too cold to charge. */
export function tooCold(scene: Scene, tell: Tell): (i: number) => void {
  const { trace, compiled } = scene
  let told = -1
  return (i) => {
    if (trace.states[i] !== 'island, generator' || compiled.columns.tempLimit[i]! > 0) return
    const day = dayAt(scene, i)
    if (day === told) return
    told = day
    const text =
      'The battery is too cold to be charged: the generator carries the loads and burns its fuel ' +
      'without storing any of it.'
    tell(i, { id: 'too-cold-to-charge', text })
  }
}
