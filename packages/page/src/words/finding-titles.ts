// What a customer is told of a finding: a few words each; the whole of it stands in the fold.

/** By the word that `check` has for it. */
export const FINDING_TITLES: Readonly<Record<string, string>> = {
  'changeover-gap': 'The moment of changeover is too long for some loads.',
  'restart-gap': 'Some loads stop at the changeover and all start again at once.',
  'running-peak': 'All loads together may be more than the battery inverter carries.',
  'starting-peak': 'A starting motor may be more than the battery inverter carries.',
  'restart-peak': 'After a time off, everything wants to start at once.',
  'solar-phase': 'Some of the solar stands on a phase that the battery does not feed.',
  'critical-phase': 'Something that must stay on stands on a phase that the battery does not feed.',
  'comfort-phase': 'Some loads stand on a phase that the battery does not feed.',
  'phase-share': 'The phases are unevenly loaded.',
  'exclusive-inputs': 'Generator and solar must never be on together.',
  'night-wait': 'At night nobody is there to start the generator.',
  'nothing-wakes': 'Nothing brings an empty battery back but the grid.',
  'what-wakes': 'An empty battery needs something to wake it.',
  'solar-rating': 'The solar is large for the battery inverter.',
  'charge-limit': 'On bright days the solar gives more than the battery can take.',
  'solar-comes-and-goes': 'On bright days the solar will come and go.',
  'generator-load': 'Everything at once is too much for the generator.',
  'generator-start': 'A starting motor may be too much for the generator.',
  'generator-charger': 'Charging the battery may be too much for the generator.',
  'generator-idles': 'The generator would run nearly idle.',
  'island-earth': 'Running on its own, the house needs an earth of its own.',
  'stack-discharge': 'The battery gives less than its inverter could.',
  'base-full': 'There is no room for more battery modules.',
  'cold-place': 'The place of the battery gets cold.',
  'fault-current': 'Running on its own, an ordinary breaker may not open at a fault.',
  'operator-threshold': 'The connection needs the agreement of the network operator.',
  'operator-code': 'The connection needs the agreement of the network operator.',
  'operator-unknown': 'The rules of the network operator are not known here.',
  'frequency-droop': 'How the solar is held back on the island is not certain.',
  'solar-wait': 'The solar waits after each changeover.',
  'fuel-kept': 'The fuel that is kept may need a notice to the authorities.',
  'fuel-ask': 'Ask how much fuel may be kept here.',
}

/** The first sentence of a text. */
export function firstSentence(text: string): string {
  return text.split(/(?<=\.) (?=[A-Z])/)[0] as string
}
