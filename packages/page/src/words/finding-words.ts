// What a customer is told of a finding: what it is, and what is to be done about it. All of it, with
// its numbers, stands in the electrician's part.

import type { Region } from './region.js'

/** By the word that `check` has for it. */
export function findingWords({
  board,
  operator,
  electrode,
}: Region): Readonly<Record<string, string>> {
  return {
    'changeover-gap':
      'The moment in which the house changes to the battery is too long for something that must not be off. ' +
      'It needs a small supply with a battery of its own beside it.',
    'restart-gap':
      'After too much at once everything is off for a minute, which something here does not bear. ' +
      'It needs a small supply with a battery of its own beside it.',
    'running-peak':
      'Everything at once can be more than the battery inverter carries. The largest of what need ' +
      'not stay on is moved to other hours or taken off the battery.',
    'starting-peak':
      'A motor that starts can be more than the battery inverter carries. It is read off the motor, and tried.',
    'restart-peak':
      'After a time off everything wants to start at once, which may be too much. Things are then ' +
      `switched on one after another; the order belongs on the ${board}.`,
    'solar-phase':
      'Some of the solar is on a phase (one of three wires) that the battery does not feed, and ' +
      'gives nothing then. It can be moved.',
    'critical-phase':
      'Something that must stay on is on a phase (one of three wires) that the battery does not ' +
      'feed. It has to be moved.',
    'comfort-phase':
      'Something is on a phase (one of three wires) that the battery does not feed. It stays off, or is moved.',
    'phase-share':
      'One phase (one of three wires) has more to carry than the others. Circuits are spread anew.',
    'exclusive-inputs':
      'Generator and solar must never be on together. A switch that cannot have both on has to be there, and be tried.',
    'night-wait':
      'At night nobody is there to start the generator, and the charge may not last until the ' +
      'morning. See what to do before bed.',
    'nothing-wakes':
      'Nothing but the grid brings an empty battery back. Switch things off by hand before it is ' +
      'empty; a generator, or solar that can charge an empty battery, would mend it.',
    'what-wakes':
      'An empty battery needs something to wake it. It is tried once while the electrician is there.',
    'solar-rating':
      'The solar is large beside the battery inverter. The maker is asked whether that is allowed without the grid.',
    'charge-limit':
      'On bright days the solar gives more than the battery can take, and may go off just then.',
    'solar-comes-and-goes':
      'When the battery is nearly full the solar goes off and comes back by itself. It is tried once.',
    'generator-load':
      'Everything at once is too much for the generator. What stays off while it runs has to be agreed.',
    'generator-start':
      'A motor that starts may be too much for the generator. It is tried while the electrician is there.',
    'generator-charger':
      'Charging the battery may be too much for the generator. The charging is set lower, and tried.',
    'generator-idles':
      'The generator would run nearly idle, which wears it. A smaller one, or a larger battery, would suit better.',
    'island-earth': `Running on its own, the house needs an earth of its own (${electrode}). It is made and measured by a licensed person.`,
    'stack-discharge':
      'The battery gives less at once than its inverter could. So less can run at once than the inverter’s plate says.',
    'base-full':
      'There is no room for more battery modules. If more may be wanted, that is planned now.',
    'cold-place':
      'The place of the battery gets cold: it then charges slowly or not at all, and gives less. ' +
      'Warmer, or insulated, it does better.',
    'fault-current':
      'Running on its own, an ordinary breaker may not open at a fault. A licensed person fits and ' +
      'tests what protects you then.',
    'operator-threshold': `The connection needs the agreement of the ${operator}, before anything is connected.`,
    'operator-code': `The connection needs the agreement of the ${operator}, before anything is connected.`,
    'operator-unknown': `The rules of the ${operator} are not known here. It is asked before anything is connected.`,
    'frequency-droop':
      'How the solar is held back when the house runs on its own is not certain. The makers are asked.',
    'solar-wait': 'The solar waits for a while after each change. How long is read off the device.',
    'fuel-kept':
      'So much fuel may have to be notified to the authorities. Less is kept, or it is notified; ' +
      'in proper cans, outside the rooms you live in, away from flames.',
    'fuel-ask': 'Ask the fire service and the insurer how much fuel may be kept here.',
  }
}
