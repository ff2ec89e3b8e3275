// The stack against its base, and against the inverter before it.

import { mostAcKw } from '../../island/balance.js'
import { type Finding, figure, type Look, short } from './finding.js'
import { largestKw } from './island-loads.js'

export const stackFit: Look = ({ demand }, { house, plant, modules }) => {
  const { modulesMax, module } = house.stack
  const found: Finding[] = []
  const mostKw = mostAcKw(plant, plant.standingKw)
  if (mostKw < plant.ratedKw) {
    const [all, critical] = [largestKw(demand, 0), largestKw(demand, demand.comfortKw.length)]
    found.push({
      id: 'stack-discharge',
      grade: critical > mostKw ? 'mend' : all > mostKw ? 'look' : 'good to know',
      what:
        `${modules === 1 ? 'One module gives' : `${modules} modules give`} ` +
        `${short(plant.dischargeKw, 2)} kW, ${short(mostKw, 2)} kW at the loads: the battery, not ` +
        `the inverter of ${short(plant.ratedKw, 2)} kVA, is the limit. The loads reach ` +
        `${short(all, 2)} kW, the critical ones ${short(critical, 2)} kW.`,
      numbers: [
        figure('one module gives', module.dischargeKw, 'kW'),
        figure('battery gives', plant.dischargeKw, 'kW'),
        figure('at the loads', mostKw, 'kW'),
        figure('inverter rating', plant.ratedKw, 'kVA'),
        figure('loads at most', all, 'kW'),
        figure('critical loads at most', critical, 'kW'),
      ],
      restsOn: 'The data sheets in the house file, losses of the inverter as simulated.',
      toDo: 'Count with the lower figure when loads are chosen; another module lifts it.',
    })
  }
  if (modules === modulesMax) {
    found.push({
      id: 'base-full',
      grade: 'good to know',
      what:
        `${modules === 1 ? 'One module is' : `${modules} modules are`} all that the base allows: ` +
        `${short(modules * module.usableKwh)} kWh new, ${short(plant.usableKwh)} kWh as aged.`,
      numbers: [
        figure('fitted', modules),
        figure('allowed', modulesMax),
        figure('usable, new', modules * module.usableKwh, 'kWh'),
        figure('usable, aged', plant.usableKwh, 'kWh'),
      ],
      restsOn: 'stack.modulesMax of the house file; where it is left out, no room for more.',
      toDo: 'If more may be wanted, plan place and base for it now.',
    })
  }
  return found
}
