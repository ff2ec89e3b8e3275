// Does the installation hold, electrically and on the day? What a check finds, gravest first.

import type { Prepared } from '../../series/prepare.js'
import { cautionsFor } from '../cautions.js'
import { meterDoubts } from '../meter-doubts.js'
import { equip, type Scenario } from '../scenario.js'
import { slipsOf } from '../slips.js'
import { changeoverGap } from './changeover.js'
import { coldPlace } from './cold.js'
import { frequencyDroop } from './droop.js'
import { islandEarth } from './earth.js'
import { faultCurrent } from './fault-current.js'
import { type Finding, GRADES, type Look } from './finding.js'
import { fuelKept } from './fuel.js'
import { exclusiveInputs } from './generator-input.js'
import { generatorLoad } from './generator-load.js'
import { operatorThresholds } from './operator.js'
import { peaks } from './peaks.js'
import { otherPhases } from './phases.js'
import { chargeAgainstSurplus, solarRating } from './solar-fit.js'
import { stackFit } from './stack-fit.js'
import { nightWait, solarWait } from './waits.js'
import { wakesEmpty } from './wake.js'

export { lockedRotorKva } from '../../house/locked-rotor.js'
export { powerShareAt } from './droop.js'
export { type Figure, type Finding, GRADES, type Grade } from './finding.js'

/** Within a grade they are told in this order. */
const LOOKS: readonly Look[] = [
  changeoverGap,
  peaks,
  otherPhases,
  exclusiveInputs,
  nightWait,
  wakesEmpty,
  solarRating,
  chargeAgainstSurplus,
  generatorLoad,
  stackFit,
  coldPlace,
  islandEarth,
  faultCurrent,
  operatorThresholds,
  frequencyDroop,
  solarWait,
  fuelKept,
]

/**
 * All findings of a house with its stack, most serious first.
 *
 * @throws  InputError where the scenario does not fit the house
 */
export function findingsOf(prepared: Prepared, scenario: Scenario = {}): Finding[] {
  const equipped = equip(prepared, scenario)
  const found = LOOKS.flatMap((look) => look(prepared, equipped))
  return GRADES.flatMap((grade) => found.filter((finding) => finding.grade === grade))
}

export interface CheckAnswer {
  readonly house: string
  readonly modules: number
  /** Share of nameplate capacity that age has left. */
  readonly health: number
  readonly findings: readonly Finding[]
  /** Likely slips of the file, and what was understood or assumed. */
  readonly warnings: readonly string[]
  readonly cautions: readonly string[]
}

/** @throws  InputError where the scenario does not fit the house */
export function checkAnswer(prepared: Prepared, scenario: Scenario = {}): CheckAnswer {
  const { house } = prepared
  const { modules, health } = equip(prepared, scenario)
  return {
    house: house.house,
    modules,
    health,
    findings: findingsOf(prepared, scenario),
    warnings: [...slipsOf(prepared), ...meterDoubts(prepared, null), ...prepared.notes],
    cautions: cautionsFor(house),
  }
}
