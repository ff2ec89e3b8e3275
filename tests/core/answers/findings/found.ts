// Findings of the small house with changes: 390 W at power factor 0.9, 5 kVA lossless but for
// 50 W idle and 10 W electronics, 10 kWh new, 2 kW of charge, indoors (no colder than 15 °C).

import { checkHouse, type Finding, findingsOf, prepare, type Scenario } from '@tideover/core'
import { plainHouse } from '../../plain-house.js'

type Plain = Record<string, unknown>

const base = plainHouse()

/** `{ 'stack.modules': 2 }` changes one field of a group and leaves the rest. */
export function findings(changes: Plain = {}, scenario: Scenario = {}): Finding[] {
  const plain: Plain = { ...base, stack: { ...(base.stack as Plain), place: 'house' } }
  for (const [path, value] of Object.entries(changes)) {
    const [group, field] = path.split('.') as [string, string | undefined]
    plain[group] = field === undefined ? value : { ...(plain[group] as Plain), [field]: value }
  }
  return findingsOf(prepare(checkHouse(plain)), scenario)
}

export function found(id: string, changes: Plain = {}, scenario?: Scenario): Finding | undefined {
  return findings(changes, scenario).find((finding) => finding.id === id)
}

/** A number of a finding by its name; NaN where there is none. */
export function numberOf(finding: Finding | undefined, name: string): number {
  const value = finding?.numbers.find((figure) => figure.name === name)?.value
  return typeof value === 'number' ? value : Number.NaN
}

export const PUMP = { name: 'pump', tier: 'critical', w: 390 }

export const GENERATOR = {
  ratedKw: 3,
  tankL: 12,
  litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
  start: 'automatic',
}
