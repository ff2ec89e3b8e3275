// What stands on a phase that the island does not feed.

import { type LoadInput, PHASES } from '../../house/house.js'
import { isOnIsland } from '../../house/phases.js'
import { CP, type Finding, figure, type Look, named, short } from './finding.js'

const SINGLE = 'An island of one phase feeds nothing on the others.'

export const otherPhases: Look = ({ house }) => {
  const { phase, phases } = house.inverter
  const solar = house.arrays.filter(
    ({ inverter }) => inverter !== undefined && !isOnIsland(house, inverter.phase),
  )
  const offPhase = (tier: LoadInput['tier']): LoadInput[] =>
    house.loads.filter((load) => load.tier === tier && !isOnIsland(house, load.phase))
  const [critical, comfort] = [offPhase('critical'), offPhase('comfort')]
  const found: Finding[] = []
  if (solar.length > 0) {
    const kw = solar.reduce((sum, { inverter }) => sum + (inverter?.ratedKw ?? 0), 0)
    found.push({
      id: 'solar-phase',
      grade: 'mend',
      what:
        `${named(solar.map((array) => array.name))}: ${short(kw, 2)} kW of solar stand on ` +
        `${phasesOf(solar.map((array) => array.inverter?.phase))}, the island on ${phase}. ` +
        'They give nothing in a cut.',
      numbers: [figure('solar off the island', kw, 'kW'), figure('phase of the island', phase)],
      restsOn: `${SINGLE} A three-phase solar inverter stays off where two phases are missing.`,
      toDo: `Move a single-phase inverter to ${phase}, or form the island on three phases.`,
    })
  }
  for (const [loads, grade] of [
    [critical, 'mend'],
    [comfort, 'look'],
  ] as const) {
    if (loads.length === 0) continue
    found.push({
      id: grade === 'mend' ? 'critical-phase' : 'comfort-phase',
      grade,
      what:
        `${named(loads.map((load) => load.name))} (${grade === 'mend' ? 'critical' : 'comfort'}) ` +
        `hang on ${phasesOf(loads.map((load) => load.phase))}, the island on ${phase}: off in a ` +
        'cut.',
      numbers: [figure('loads', loads.length), figure('phase of the island', phase)],
      restsOn: SINGLE,
      toDo: `Move their circuits to ${phase} in the consumer unit, or form it on three phases.`,
    })
  }
  return phases === 3 ? unbalanced(house) : found
}

/** On three phases each carries a third of the rating. */
function unbalanced({ inverter, loads }: Parameters<Look>[0]['house']): Finding[] {
  const eachKw = inverter.ratedKva / 3
  const sums = PHASES.map((phase) => ({
    phase,
    kw: loads
      .filter((load) => load.phase === phase && load.tier !== 'gridOnly')
      .reduce((sum, { w = 0, pieces, powerFactor }) => sum + (w * pieces) / 1000 / powerFactor, 0),
  }))
  const worst = sums.reduce((a, b) => (b.kw > a.kw ? b : a))
  if (!(worst.kw > eachKw)) return []
  return [
    {
      id: 'phase-share',
      grade: 'look',
      what:
        `All that hangs on ${worst.phase} is ${short(worst.kw, 2)} kVA, and one phase of the ` +
        `island carries ${short(eachKw, 2)} kVA.`,
      numbers: [
        ...sums.map(({ phase, kw }) => figure(`connected on ${phase}`, kw, 'kVA')),
        figure('one phase carries', eachKw, 'kVA'),
      ],
      restsOn: `${CP} A third of the rating a phase; the data sheet may allow a skew.`,
      toDo: 'Spread the circuits of the island over the phases.',
    },
  ]
}

function phasesOf(phases: readonly (string | undefined)[]): string {
  const known = [...new Set(phases)].filter((phase) => phase !== undefined)
  return known.map((phase) => (phase === 'three' ? 'three phases' : phase)).join(' and ')
}
