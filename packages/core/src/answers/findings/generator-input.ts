// Generator and AC-coupled solar must never stand on the island together.

import { isOnIsland } from '../../house/phases.js'
import { solarRatedKw } from '../../house/solar-groups.js'
import { CP, figure, type Look, short } from './finding.js'

/** The finding does not see what was left out, so it says what then is taken. */
const ASSUMED =
  'One input is taken where gateway.oneInputForEither is left out, to be on the cautious side. '

export const exclusiveInputs: Look = (_, { house }) => {
  const { generator, arrays, gateway } = house
  const solarKw = solarRatedKw(arrays.filter(({ inverter }) => isOnIsland(house, inverter?.phase)))
  if (generator === undefined || !(solarKw > 0)) return []
  const one = gateway.oneInputForEither
  return [
    {
      id: 'exclusive-inputs',
      grade: one ? 'mend' : 'look',
      what: one
        ? 'The gateway has one input for either the generator or the AC-coupled solar: only one ' +
          'of them can ever be on it, and solar that feeds into a generator drives it backwards.'
        : 'Generator and AC-coupled solar have inputs of their own. Solar that feeds into a ' +
          'generator drives it backwards, so the one must lock the other out.',
      numbers: [
        figure('generator', generator.ratedKw, 'kW'),
        figure('AC-coupled solar', solarKw, 'kW'),
        figure('one input for either', one ? 'yes' : 'no'),
      ],
      restsOn: `${CP} ${one ? ASSUMED : ''}The simulation leaves ${short(solarKw, 2)} kW of solar off while the generator runs.`,
      toDo: one
        ? 'Fit an interlocked changeover switch that opens the solar before it closes the ' +
          'generator, and say on the board who turns it.'
        : 'Prove on site that the gateway opens the solar before the generator is closed, and ' +
          'the other way round; without that proof fit an interlock.',
    },
  ]
}
