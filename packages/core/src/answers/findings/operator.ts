// Thresholds of the network operator, by the code the house names.

import { GRID_CODES, type GridCode, type House } from '../../house/house.js'
import { solarRatedKw } from '../../house/solar-groups.js'
import { CP, type Finding, figure, type Look, short } from './finding.js'

/** 16 A at 230 V. [kW a phase] */
const SIXTEEN_A_KW = 3.68

const NAMES: Readonly<Record<GridCode, string>> = {
  G98: 'EREC G98',
  G99: 'EREC G99',
  IEEE1547: 'IEEE 1547',
  AS4777: 'AS/NZS 4777',
  EN50549: 'EN 50549',
}

const ASK = 'Agree it with the network operator before anything is connected; they decide.'

export const operatorThresholds: Look = ({ house }) => {
  const code = house.site.gridCode
  if (code === undefined) return [unknownCode(house)]
  const { inverter, gateway } = house
  const solarKw = solarRatedKw(house.arrays)
  const totalKw = solarKw + inverter.ratedKva
  const limitKw = SIXTEEN_A_KW * (isThreePhase(house) ? 3 : 1)
  const over = totalKw > limitKw
  const { exportLimitKw } = gateway
  const numbers = [
    figure('solar inverters', solarKw, 'kW'),
    figure('battery inverter', inverter.ratedKva, 'kVA'),
    figure('together', totalKw, 'kW'),
    ...(exportLimitKw === undefined ? [] : [figure('export limit', exportLimitKw, 'kW')]),
  ]
  const sum = `Solar and battery inverters together are ${short(totalKw, 2)} kW.`
  const limited =
    exportLimitKw === undefined
      ? ''
      : ` The export limit of ${short(exportLimitKw, 2)} kW must fail safe and be proven; it does ` +
        'not by itself make the installation a smaller one.'
  if (code === 'G98') {
    if (!over) return []
    return [
      {
        id: 'operator-threshold',
        grade: 'mend',
        what:
          `${sum} ${NAMES.G98} covers 16 A a phase, ${short(limitKw, 2)} kW here: this is a case ` +
          `for an application under ${NAMES.G99} before work begins.${limited}`,
        numbers: [...numbers, figure('16 A a phase', limitKw, 'kW')],
        restsOn:
          '16 A or 3.68 kW a phase: seen on a public energy advice page. That the battery ' +
          'inverter counts with the solar: from memory.',
        toDo: ASK,
      },
    ]
  }
  const memory16 = code === 'EN50549' ? [figure('16 A a phase', limitKw, 'kW')] : []
  return [
    {
      id: 'operator-code',
      grade: code === 'EN50549' && !over ? 'good to know' : 'look',
      what:
        `${sum} ` +
        (code === 'G99'
          ? `${NAMES.G99} wants an application and an answer before work begins.`
          : code === 'EN50549'
            ? `Above 16 A a phase, ${short(limitKw, 2)} kW here, ${NAMES.EN50549} asks more of them.`
            : `What ${NAMES[code]} and the operator's own rules allow here is not known to this check.`) +
        limited,
      numbers: [...numbers, ...memory16],
      restsOn:
        code === 'IEEE1547' || code === 'AS4777'
          ? 'The ratings of the house file; no threshold is written down here for this code.'
          : 'From memory; the text of the code was not read.',
      toDo: ASK,
    },
  ]
}

function isThreePhase(house: Parameters<Look>[0]['house']): boolean {
  return (
    house.inverter.phases === 3 &&
    house.arrays.every((a) => (a.inverter?.phase ?? 'three') === 'three')
  )
}

/** Where the file names no code, the thresholds cannot be told. */
function unknownCode({ arrays, inverter }: House): Finding {
  const solarKw = solarRatedKw(arrays)
  const totalKw = solarKw + inverter.ratedKva
  return {
    id: 'operator-unknown',
    grade: 'look',
    what:
      'The file does not name the code the installation connects under (site.gridCode: ' +
      `${GRID_CODES.join(', ')}). Solar and battery inverters together are ` +
      `${short(totalKw, 2)} kW: count on an application to the network operator before work begins.`,
    numbers: [
      figure('solar inverters', solarKw, 'kW'),
      figure('battery inverter', inverter.ratedKva, 'kVA'),
      figure('together', totalKw, 'kW'),
    ],
    restsOn: CP,
    toDo: 'Name the code in the file and ask the network operator; some allow 16 A a phase at once.',
  }
}
