// Words of what to do in a cut, what was not looked at, and what the electrician found.

import { aloneTooMuch, type Finding, type House } from '@tideover/core'
import type { PageFacts } from '../facts.js'
import { type ComfortStep, comfortSteps } from '../papers/steps.js'
import { capital, namesOf } from './answer.js'
import { findingWords } from './finding-words.js'
import { loadsOffWords } from './loads-off.js'
import { grouped, listed, percent } from './numbers.js'
import type { Region } from './region.js'

export type DoingWords = ReturnType<typeof doingWords>

export function doingWords(region: Region, facts: PageFacts) {
  const findings = findingWords(region)
  return {
    title: `What to do in ${region.aCut}`,
    steps: steps(region, facts),
    uncheckedTitle: 'What was not checked',
    uncheckedLead: 'A calculation cannot know these. They are measured in the house:',
    unchecked: unchecked(region),
    findingsTitle: 'What the electrician still has to see to',
    noFindings: 'Nothing that the calculation could find.',
    grades: { mend: 'To be put right first', look: 'To be looked at in the house' },
    finding: ({ id, what }: Finding): string => findings[id] ?? what,
    findingsMore: 'Each stands with its numbers in the part for the electrician, at the end.',
    cautionsTitle: 'Take care',
  }
}

function steps(region: Region, facts: PageFacts): string[] {
  const { house } = facts.equipped
  return [
    switchOff(facts),
    ...generatorSteps(facts),
    emptyStep(facts),
    ...wakeSteps(house),
    overloadStep(facts),
    personStep(house),
    ...(region.dial === ''
      ? []
      : [`Dial ${region.dial} to tell the ${region.operator}, and to hear what it knows.`]),
  ].filter((step) => step !== '')
}

function switchOff(facts: PageFacts): string {
  const extra = namesOf(facts, 'comfort')
  const off = namesOf(facts, 'gridOnly')
  const gone = off.length === 0 ? '' : ` ${capital(listed(off))} will not run: leave it so.`
  if (extra.length === 0) return `Switch off whatever you do not need.${gone}`
  return (
    `Switch off what you can spare (${listed(extra)}): mostly it then lasts longer. ` +
    `${goesOff(comfortSteps(facts))}${gone}`
  )
}

function goesOff(steps: readonly ComfortStep[]): string {
  const limits = ({ dropBelow, returnAt }: ComfortStep): string =>
    `below ${percent(dropBelow)} of charge, and is back above ${percent(returnAt)}`
  const [only, ...more] = steps
  if (only !== undefined && more.length === 0) return `It goes off by itself ${limits(only)}.`
  return `By itself goes off: ${steps.map((step) => `${listed(step.names)} ${limits(step)}`).join('; ')}.`
}

function generatorSteps({ equipped, findings }: PageFacts): string[] {
  const { generator, person } = equipped.house
  if (generator === undefined) return []
  const fuel =
    `It has ${grouped(generator.tankL)} litres in the tank` +
    (generator.cansL > 0 ? ` and ${grouped(generator.cansL)} in cans` : '') +
    '. Outdoors only, far from doors and windows.'
  if (generator.start === 'automatic') {
    return [
      `The generator starts by itself at ${percent(generator.startAt)} of charge and stops at ` +
        `${percent(generator.stopAt)}. ${fuel}`,
    ]
  }
  const early =
    person === undefined
      ? ''
      : ` Nobody is counted on to start it from ${person.to} to ${person.from}: ${bedtime(findings)}.`
  return [
    `Start the generator when the charge falls to ${percent(generator.startAt)}, and let it run ` +
      `to ${percent(generator.stopAt)}.${early} ${fuel}`,
  ]
}

/** What to look for before the night. */
function bedtime(findings: readonly Finding[]): string {
  const night = findings.find(({ id }) => id === 'night-wait')
  const share = night?.numbers.find(({ name }) => name === 'charge needed at bedtime')?.value
  if (typeof share !== 'number') return 'look at the charge before the night'
  return share < 1
    ? `go to bed with a charge of ${Math.ceil(100 * share)}\u00a0% or more and what you can spare switched off, else run it first`
    : 'no charge lasts the night, so run it late in the evening and early in the morning'
}

function emptyStep({ prepared, equipped }: PageFacts): string {
  const { inverter } = equipped.house
  const { at: off, back } = loadsOffWords(prepared, equipped, percent)
  if (inverter.whenEmpty === 'holds') {
    return (
      `At a charge of ${off} everything goes off, but the battery inverter keeps running. What must ` +
      `stay on comes back by itself once the sun has brought ${back}.`
    )
  }
  if (inverter.whenEmpty === 'retries') {
    return (
      `At a charge of ${off} everything goes off. The battery inverter tries again by itself from ` +
      `${listed(inverter.retryAt)}, so that the sun can charge it; power is back at ${back}.`
    )
  }
  return `At a charge of ${off} everything goes off, and the house is dark.`
}

const WAKES: Readonly<Record<House['inverter']['wakesOn'][number], string>> = {
  sun: 'sun on the panels',
  generator: 'the generator, with fuel in its tank',
  person: 'somebody who switches the battery inverter on again, loads off, while the sun shines',
}

function wakeSteps({ inverter, generator, arrays }: House): string[] {
  if (inverter.whenEmpty === 'holds') return []
  const isAsleep = inverter.whenEmpty === 'collapses'
  const wakes = inverter.wakesOn.includes('sun')
  const noSun = arrays.length > 0 && isAsleep && !wakes ? ' The sun alone cannot wake it.' : ''
  const ways = inverter.wakesOn
    .filter((way) => way !== 'generator' || generator !== undefined)
    .map((way) => WAKES[way])
  if (ways.length === 0) {
    return isAsleep
      ? [`When everything is off, nothing but the grid brings it back.${noSun}`]
      : ['The grid brings it back too.']
  }
  const also = isAsleep ? 'brings' : 'also brings'
  return [
    `What ${also} it back when everything is off: ${ways.join(', or ')}; or the grid.${noSun}`,
  ]
}

function overloadStep({ prepared, equipped }: PageFacts): string {
  if (equipped.house.inverter.onOverload === 'sheds') {
    return 'Too much at once: what runs only while it lasts goes off for five minutes and returns by itself.'
  }
  const { highest } = loadsOffWords(prepared, equipped, percent)
  const alone = aloneTooMuch(prepared, equipped)
    .filter(({ critical }) => !critical)
    .map(({ name }) => name)
  const never =
    alone.length === 0 ? '' : `Never use these in a cut: ${listed(alone)}; each alone is too much. `
  return (
    `${never}Dark at a charge well above ${highest}: too much at once (a kettle beside a starting pump, ` +
    'say). It tries again three times, a minute apart; then somebody has to switch things off and ' +
    'reset it at the battery inverter.'
  )
}

function personStep({ person, generator, inverter }: House): string {
  const tasks = [
    ...(generator?.start === 'by hand' ? ['to start the generator'] : []),
    ...((generator?.cansL ?? 0) > 0 ? ['to fill its tank from the cans'] : []),
    ...(inverter.onOverload === 'trips' ? ['to reset after too much at once'] : []),
    ...(inverter.wakesOn.includes('person') ? ['to wake the empty battery'] : []),
  ]
  if (tasks.length === 0) return ''
  if (person === undefined) {
    return `A person is needed ${listed(tasks)}. None is counted on: the figures stand without.`
  }
  return (
    `A person is needed ${listed(tasks)}. Counted on from ${person.from} to ${person.to}, within ` +
    `${person.minutes} minutes; at other hours it waits.`
  )
}

function unchecked(region: Region): string[] {
  return [
    `the ${region.electrode} and its resistance, and the ${region.bond} made while the house runs on its own`,
    'whether breakers and residual-current devices still trip when only the battery feeds a fault',
    'what the motors in the house really take as they start',
    'how long the changeover really takes, and what it switches off',
    'how cold or hot the place of the battery really gets',
    'how warm fridge and freezer really get: put a thermometer in',
    `what the ${region.operator} asks for and has agreed to`,
    'the state of the wiring, and of an old solar inverter',
  ]
}
