// Which limit a minute of a cut passed, told of the level and the loads that were tried in it.

import { Event } from '../island/state.js'
import { hardestNames } from '../load/island-loads.js'
import { TOGETHER_AFTER } from '../load/together.js'
import { generatorOverText, type OverloadMinute, overloadText } from './overload-text.js'
import type { Scene } from './scene.js'

/** Why the island dropped out. */
export function whyOver(scene: Scene, i: number): string {
  const events = scene.trace.events[i]!
  if ((events & Event.generatorOverload) !== 0) {
    const starts = (events & Event.generatorOn) === 0 ? '' : 'starts and '
    return `The generator ${starts}stalls, and the island with it. ${generatorOver(scene, i, true)}`
  }
  return overloadText(scene.compiled, islandOver(scene, i))
}

/** The loads that were too much, the hardest first. */
export function namesOver(scene: Scene, i: number): readonly string[] {
  const isGenerator = (scene.trace.events[i]! & Event.generatorOverload) !== 0
  return (isGenerator ? generatorMinute(scene, i, true) : islandOver(scene, i)).names
}

/** The loads for which the relay dropped the comfort loads. */
export function namesShed(scene: Scene, i: number): readonly string[] {
  return overloadMinute(scene, i, 0, false).names
}

/** The minute in which the inverter, or the stack, gave up. */
function islandOver(scene: Scene, i: number): OverloadMinute {
  const { trace, compiled } = scene
  const { rules, columns } = compiled
  const events = trace.events[i]!
  const isFirst = (events & Event.cutBegins) !== 0
  const forms = (events & Event.loadsBack) !== 0 || (isFirst && rules.motorsStop)
  const over = forms ? columns.overForming : columns.overload
  const before = i === 0 || isFirst ? 0 : Math.min(trace.levels[i - 1]!, rules.lastLevel)
  // An island that formed with all its loads, or with the critical ones only.
  const level = forms && !isFirst && over[rules.lastLevel]![i] === 1 ? rules.lastLevel : before
  return overloadMinute(scene, i, over[level]![i] === 1 ? level : 0, forms)
}

/** What the generator could not carry: with what was on, or with the critical loads alone. */
export function generatorOver(scene: Scene, i: number, only: boolean): string {
  return generatorOverText(scene.compiled, scene.house, generatorMinute(scene, i, only))
}

function generatorMinute(scene: Scene, i: number, only: boolean): OverloadMinute {
  const { trace, compiled } = scene
  const { rules } = compiled
  const forms = (trace.events[i]! & Event.loadsBack) !== 0
  const before = i === 0 ? 0 : Math.min(trace.levels[i - 1]!, rules.lastLevel)
  return overloadMinute(scene, i, only ? rules.lastLevel : before, forms)
}

function overloadMinute(scene: Scene, i: number, level: number, forms: boolean): OverloadMinute {
  const { trace, compiled, loads } = scene
  const { rules, demand, window } = compiled
  let offFor = 0
  while (offFor < Math.min(i, TOGETHER_AFTER) && trace.levels[i - 1 - offFor]! > rules.lastLevel) {
    offFor++
  }
  const at = (i + window.from) % demand.n
  const only = level === rules.lastLevel && level > 0
  const waitedFor = !forms ? null : offFor < TOGETHER_AFTER ? offFor : 'all'
  return { minute: i, level, forms, offFor, names: hardestNames(loads(), at, only, waitedFor) }
}

/** Why the relay dropped the comfort loads. */
export function whyShed(scene: Scene, i: number): string {
  return overloadText(scene.compiled, overloadMinute(scene, i, 0, false))
}
