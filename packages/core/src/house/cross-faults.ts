// Faults that only two fields together show. They are looked for even where single fields are
// wrong, so that a person mends a file once; a field already reported is not reported again.

import { DEFAULTS } from './defaults.js'
import type { Phase } from './house.js'
import { checkKept } from './kept-faults.js'
import { isOnIsland } from './phases.js'
import { type Problem, printable } from './problem.js'
import { islandWay, MOST_GROUPS } from './solar-groups.js'
import { SURVEY_ONLY, surveyFaults } from './survey-faults.js'

type Plain = Record<string, unknown>

/** @param known  paths already found wrong */
export function crossFaults(plain: unknown, known: ReadonlySet<string>): Problem[] {
  const house = asGroup(plain)
  const found: Problem[] = []
  const add = (where: string, need: string, value: unknown): void => {
    if (!known.has(where)) found.push({ where, need, got: printable(value) })
  }
  checkSky(house, add)
  checkStack(asGroup(house.stack), add)
  checkInverter(house, add)
  checkArrays(house, add)
  checkLoads(asList(house.loads), add)
  checkMeterFiles(house, add)
  checkGenerator(house, add)
  return found
}

type Add = (where: string, need: string, value: unknown) => void

function checkSky(house: Plain, add: Add): void {
  if (typeof house.sky !== 'object') return
  const { file, clearness, airC } = asGroup(house.sky)
  if (file !== undefined) return
  if (clearness === undefined) {
    add('sky.clearness', 'given, 12 monthly values (or name a weather file in sky.file)', clearness)
  }
  if (airC === undefined) {
    add('sky.airC', 'given, 12 monthly values [°C] (or name a weather file in sky.file)', airC)
  }
}

function checkStack(stack: Plain, add: Add): void {
  const { modules, modulesMax } = stack
  if (isNumber(modules) && isNumber(modulesMax) && modules > modulesMax) {
    add('stack.modules', `at most stack.modulesMax, which is ${modulesMax}`, modules)
  }
}

function checkInverter(house: Plain, add: Add): void {
  const inverter = asGroup(house.inverter)
  const comfort = asGroup(house.comfort)
  const off = numberOr(inverter.loadsOffAt, DEFAULTS['inverter.loadsOffAt'].value)
  const back = numberOr(inverter.loadsBackAt, DEFAULTS['inverter.loadsBackAt'].value)
  const drop = numberOr(comfort.dropBelow, DEFAULTS['comfort.dropBelow'].value)
  const returns = numberOr(comfort.returnAt, DEFAULTS['comfort.returnAt'].value)
  if (back <= off) add('inverter.loadsBackAt', `above inverter.loadsOffAt, which is ${off}`, back)
  if (drop < off) add('comfort.dropBelow', `at least inverter.loadsOffAt, which is ${off}`, drop)
  const { ratedKva, chargeKw } = inverter
  if (isNumber(ratedKva) && isNumber(chargeKw) && chargeKw > ratedKva) {
    add('inverter.chargeKw', `at most inverter.ratedKva, which is ${ratedKva}`, chargeKw)
  }
  const minute = isNumber(inverter.minuteKva) ? inverter.minuteKva : ratedKva
  if (isNumber(ratedKva) && isNumber(minute) && minute < ratedKva) {
    add('inverter.minuteKva', `at least inverter.ratedKva, which is ${ratedKva}`, minute)
  }
  if (isNumber(inverter.startingKva) && isNumber(minute) && inverter.startingKva < minute) {
    add(
      'inverter.startingKva',
      `at least what it carries for longer, ${minute} kVA`,
      inverter.startingKva,
    )
  }
  checkWakes(house, asArray(inverter.wakesOn), add)
  if (returns <= drop) add('comfort.returnAt', `above comfort.dropBelow, which is ${drop}`, returns)
}

function checkWakes(house: Plain, wakesOn: readonly unknown[], add: Add): void {
  for (const [i, way] of wakesOn.entries()) {
    const at = `inverter.wakesOn[${i}]`
    const isDc = asList(house.arrays).some(
      ({ inverter, onInverterOf }) => inverter === undefined && onInverterOf === undefined,
    )
    if (way === 'sun' && !isDc) {
      add(at, 'left out: AC-coupled solar cannot wake a stack, and no array is DC-coupled', way)
    }
    if (way === 'generator' && house.generator === undefined) {
      add(at, 'left out, or a generator given', way)
    }
    if (way === 'person' && house.person === undefined) {
      add(at, 'left out, or a person given, with minutes and hours', way)
    }
  }
}

function checkArrays(house: Plain, add: Add): void {
  const arrays = asList(house.arrays)
  checkNames(arrays, 'arrays', add)
  for (const [i, array] of arrays.entries()) {
    const inverter = asGroup(array.inverter)
    const out = numberOr(inverter.outAbove, DEFAULTS['arrays[].inverter.outAbove'].value)
    const back = numberOr(inverter.backBelow, DEFAULTS['arrays[].inverter.backBelow'].value)
    if (back >= out) {
      add(`arrays[${i}].inverter.backBelow`, `below inverter.outAbove, which is ${out}`, back)
    }
  }
  checkShared(arrays, add)
  checkGroups(house, arrays, add)
}

/** Arrays that share an inverter, and logs of what one gives. */
function checkShared(arrays: Plain[], add: Add): void {
  for (const [i, array] of arrays.entries()) {
    const at = `arrays[${i}]`
    if (array.file !== undefined && array.inverter === undefined) {
      add(`${at}.inverter`, 'given, for an array whose AC output was logged', undefined)
    }
    for (const field of ['column', 'zone'] as const) {
      if (array.file !== undefined || array[field] === undefined) continue
      add(`${at}.${field}`, 'left out where no log is named in file', array[field])
    }
    if (array.onInverterOf === undefined) continue
    const other = arrays.find(({ name }) => name === array.onInverterOf)
    if (other?.inverter === undefined || other === array) {
      add(`${at}.onInverterOf`, 'the name of another array with an inverter', array.onInverterOf)
    }
    if (other?.file !== undefined) {
      add(at, `left out: the log of ${other.name} holds it already`, array.name)
    }
    for (const field of ['inverter', 'file', 'trackerKw'] as const) {
      if (array[field] === undefined) continue
      add(`${at}.${field}`, "left out beside onInverterOf: it is the other array's", array[field])
    }
  }
}

/** On the island solar inverters behave in two ways at most. */
function checkGroups(house: Plain, arrays: Plain[], add: Add): void {
  const island = asGroup(house.inverter)
  const phases = island.phases === 3 ? 3 : 1
  const phase = (island.phase ?? DEFAULTS['inverter.phase'].value) as Phase
  const fed = arrays.flatMap(({ name, inverter }, i) => {
    const on = asGroup(inverter)
    const isFed = isOnIsland({ inverter: { phases, phase } }, on.phase as Phase | undefined)
    return inverter === undefined || !isFed ? [] : [{ i, name, way: islandWay(on) }]
  })
  const known = new Map<string, unknown>()
  for (const { i, name, way } of fed) {
    if (known.has(way)) continue
    if (known.size < MOST_GROUPS) known.set(way, name)
    else {
      const others = [...known.values()].join(' or ')
      add(
        `arrays[${i}].inverter`,
        `like that of ${others} in onIsland and its settings: on the island at most two kinds of ` +
          'solar inverter are followed',
        name,
      )
    }
  }
}

function checkLoads(loads: Plain[], add: Add): void {
  checkNames(loads, 'loads', add)
  const names = new Set(loads.map((load) => load.name))
  for (const [i, load] of loads.entries()) {
    const at = `loads[${i}]`
    const whole = wholeFigure(load)
    if (load.tier === undefined && load.like === undefined) {
      add(`${at}.tier`, 'one of critical, comfort, gridOnly (or a kind given in like)', undefined)
    }
    if (
      load.w === undefined &&
      load.byAir === undefined &&
      load.like === undefined &&
      whole === null
    ) {
      add(`${at}.w`, 'given [W], or a meter file named in file, or a profile', undefined)
    }
    if (load.file !== undefined && load.profile !== undefined) {
      add(`${at}.profile`, 'left out where a meter file is named', load.profile)
    }
    if (whole !== null) {
      for (const field of SURVEY_ONLY) {
        if (load[field] === undefined) continue
        add(`${at}.${field}`, `left out where ${whole}`, load[field])
      }
      // `always` is what stands there when nothing was said.
      if (load.runs !== undefined && load.runs !== 'always') {
        add(`${at}.runs`, `left out where ${whole}, which has its own seasons`, load.runs)
      }
    }
    surveyFaults(load, at, add)
    checkMotor(load, at, add)
    checkKept(load, at, add)
    if (load.contains !== undefined && whole === null) {
      const need = 'left out where no meter file is named and no profile given'
      add(`${at}.contains`, need, load.contains)
    }
    for (const [j, name] of asArray(load.contains).entries()) {
      if (!names.has(name) || name === load.name) {
        add(`${at}.contains[${j}]`, 'the name of another load', name)
      }
    }
  }
  if (loads.length > 0 && !loads.some((load) => load.tier === 'critical')) {
    add('loads', 'a list with at least one load of tier critical', loads)
  }
}

/** What is said of a meter file stands beside one and fits the house. */
function checkMeterFiles(house: Plain, add: Add): void {
  const arrays = new Set(asList(house.arrays).map(({ name }) => name))
  for (const [i, load] of asList(house.loads).entries()) {
    const at = `loads[${i}]`
    for (const field of ['column', 'zone', 'beforeArrays', 'seasonal'] as const) {
      if (load.file !== undefined || load[field] === undefined) continue
      add(`${at}.${field}`, 'left out where no meter file is named', load[field])
    }
    for (const [j, name] of asArray(load.beforeArrays).entries()) {
      if (!arrays.has(name)) add(`${at}.beforeArrays[${j}]`, 'the name of an array', name)
    }
  }
}

/** What gives the figure of more than one appliance, in words; null for a line of the survey. */
function wholeFigure({ file, profile }: Plain): string | null {
  if (file !== undefined) return 'a meter file is named'
  return profile === undefined ? null : 'a profile is given'
}

/** A motor's plate has both or helps nothing. */
function checkMotor(load: Plain, at: string, add: Add): void {
  const { motorHp, lockedRotorCode } = load
  const whole = wholeFigure(load)
  if (motorHp !== undefined && lockedRotorCode === undefined) {
    add(`${at}.lockedRotorCode`, 'given beside motorHp, the letter on the plate', undefined)
  }
  if (motorHp === undefined && lockedRotorCode !== undefined) {
    add(`${at}.motorHp`, 'given beside lockedRotorCode [hp]', undefined)
  }
  if (motorHp !== undefined && whole !== null) {
    add(`${at}.motorHp`, `left out where ${whole}`, motorHp)
  }
}

function checkGenerator(house: Plain, add: Add): void {
  if (house.generator === undefined) return
  const { start, startAt, stopAt, mostShare, leastShare, litresPerHour } = asGroup(house.generator)
  if (start === 'by hand' && house.person === undefined) {
    add('person', 'given, for a generator that is started by hand', undefined)
  }
  const from = numberOr(startAt, DEFAULTS['generator.startAt'].value)
  const to = numberOr(stopAt, DEFAULTS['generator.stopAt'].value)
  if (to <= from) add('generator.stopAt', `above generator.startAt, which is ${from}`, to)
  const most = numberOr(mostShare, DEFAULTS['generator.mostShare'].value)
  const least = numberOr(leastShare, DEFAULTS['generator.leastShare'].value)
  if (least >= most) {
    add('generator.leastShare', `below generator.mostShare, which is ${most}`, least)
  }
  const { none, half, full } = asGroup(litresPerHour)
  if (isNumber(none) && isNumber(half) && isNumber(full) && !(none <= half && half <= full)) {
    add('generator.litresPerHour', 'rising from none over half to full [l/h]', [none, half, full])
  }
}

function checkNames(entries: Plain[], list: string, add: Add): void {
  const seen = new Map<unknown, number>()
  for (const [i, { name }] of entries.entries()) {
    const before = seen.get(name)
    if (before !== undefined && name !== undefined) {
      add(`${list}[${i}].name`, `a name of its own, ${list}[${before}] has it already`, name)
    }
    seen.set(name, i)
  }
}

function asGroup(value: unknown): Plain {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? (value as Plain)
    : {}
}

function asArray(value: unknown): unknown[] {
  return Array.isArray(value) ? value : []
}

function asList(value: unknown): Plain[] {
  return asArray(value).map(asGroup)
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number'
}

function numberOr(value: unknown, fallback: number): number {
  return isNumber(value) ? value : fallback
}
