// What is said beside every answer, because people can be hurt.

import type { House, LoadInput } from '../house/house.js'

/** Cautions for a house, most general last. */
export function cautionsFor(house: House): string[] {
  const cautions = [
    'Running as an island needs isolation of all live conductors, an earth electrode of its own ' +
      'and a neutral-earth bond that it makes only while it runs; the supply earth is not to be ' +
      'relied on. Work for a licensed person, agreed with the network operator.',
  ]
  if (anyLoad(house, FIRE, (load) => load.overheats !== undefined)) {
    cautions.push(
      'A boiler or stove that burns solid fuel needs a heat leak and protection that work with no ' +
        'power at all.',
    )
  }
  if (anyLoad(house, MEDICAL, (load) => load.holdOver?.keeps === 'medicine')) {
    cautions.push(
      "Nobody's health rests on a simulation: medicines follow pharmacist and maker, and a " +
        'medical device needs a plan of its own for a longer cut.',
    )
  }
  if (anyLoad(house, COLD, ({ holdOver }) => holdOver !== undefined)) {
    cautions.push(
      'Food: public guidance counts on 4 h in a fridge, 24 h in a half-full and 48 h in a full ' +
        'freezer, doors shut, and has what was above 4 °C for 2 h thrown away. Put a thermometer in.',
    )
  }
  if (anyLoad(house, PHONES, () => false)) {
    cautions.push(
      'Telephone, alarm button and internet die with the router, and with the street cabinet ' +
        'whatever the house does: keep a way to call for help that needs neither.',
    )
  }
  if (house.generator !== undefined) {
    cautions.push(
      'A generator runs outdoors, far from doors and windows: its exhaust holds carbon monoxide.',
    )
  }
  cautions.push(
    'A simulation under stated conditions, not a guarantee. Local codes, the network operator ' +
      'and licensed people have the last word.',
  )
  return cautions
}

function anyLoad(house: House, names: RegExp, keeps: (load: LoadInput) => boolean): boolean {
  return house.loads.some(
    (load) => names.test(load.name) || names.test(load.like ?? '') || keeps(load),
  )
}

/** Whether health or a fire hangs on a load, so that nobody is told to switch it off. */
export function isVital(load: LoadInput): boolean {
  const said = `${load.name} ${load.like ?? ''}`
  return (
    MEDICAL.test(said) ||
    FIRE.test(said) ||
    load.overheats !== undefined ||
    load.holdOver?.keeps === 'medicine'
  )
}

const FIRE = /boiler|stove|solid.?fuel/i
const COLD = /fridge|freezer|refrigerator/i
const PHONES = /router|phone|alarm|internet|broadband/i
const MEDICAL = /medic|insulin|vaccin|oxygen|dialys|ventilator|cpap|breathing|hoist|alarm/i
