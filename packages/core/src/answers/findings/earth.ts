// Earth and neutral of the island: always to be looked into on site, never computed.

import { figure, type Look } from './finding.js'

export const islandEarth: Look = ({ house }) => {
  const { generator, inverter } = house
  const set =
    generator === undefined
      ? ''
      : ' A portable set has a floating or a bonded neutral: with the island formed there may be ' +
        'one bond only.'
  return [
    {
      id: 'island-earth',
      grade: 'look',
      what:
        'On the island the earth of the supply is not to be relied on, whatever the supply is ' +
        '(an earthed neutral in the cable the least): all live conductors have to be isolated, ' +
        `neutral bonded to earth by the island itself while it runs, on an electrode of its own.${set}`,
      numbers: [figure('phases to isolate, with neutral', inverter.phases + 1)],
      restsOn:
        'Seen in quotations of BS 7671 (551.4.3.2.1, 826.1.1.2.1) and of the IET code of practice ' +
        'for electrical energy storage, 2020; other countries have their own rules.',
      toDo:
        'Measure the electrode, prove the bond and its release with the grid back, and test ' +
        'residual-current devices with the grid off; work for a licensed person.',
    },
  ]
}
