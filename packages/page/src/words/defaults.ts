// What a house file may leave out, by names that a reader of the page knows.

import { DEFAULTS, type DefaultPath, type House } from '@tideover/core'
import { percent } from './numbers.js'

/** `Reserve of the battery: 50 %`; of a load or an array, its name is said first. */
export function assumedValue(house: House, path: string, value: string): string {
  const pattern = path.replace(/\[\d+\]/g, '[]') as DefaultPath | 'loads[].like'
  const [, list, which] = /^(\w+)\[(\d+)\]/.exec(path) ?? []
  const owner = list === undefined ? undefined : house[list as 'loads' | 'arrays'][Number(which)]
  const name = NAMES[pattern] ?? path
  const share = pattern in DEFAULTS && DEFAULTS[pattern as DefaultPath].unit === 'share of 1'
  const shown = share && Number.isFinite(Number(value)) ? percent(Number(value)) : plainly(value)
  return `${owner === undefined ? '' : `${owner.name}: `}${name}: ${shown}`
}

/** Values that name other fields of the file, or that only a file would say so. */
const PLAIN: readonly (readonly [RegExp, string])[] = [
  [/\brated(Kva|Kw)\b/, 'its rating'],
  [/\bpeakKw\b/, 'the peak'],
  [/^limitC$/, 'the limit'],
  [/^atC$/, 'the same'],
  [/^modules$/, 'as many as there are'],
  [/^true$/, 'yes'],
]

function plainly(value: string): string {
  return PLAIN.reduce((text, [field, words]) => text.replace(field, words), value)
}

const NAMES: Readonly<Record<DefaultPath | 'loads[].like', string>> = {
  year: 'Year of the calendar',
  seed: 'Number that fixes all chance',
  'sky.linkeTurbidity': 'Haze of the air',
  'sky.albedo': 'Light that the ground throws back',
  'sky.airMarginK': 'Degrees taken off for a cold spell',
  'arrays[].lossShare': 'Loss of the panels to dirt, cables and shade',
  'arrays[].ageYears': 'Age of the panels in years',
  'arrays[].perKelvin': 'Change of the panels’ power with each degree',
  'arrays[].trackerKw': 'Most that the solar charger passes on',
  'arrays[].inverter.efficiency': 'Efficiency of the solar inverter',
  'arrays[].inverter.onIsland': 'What the solar inverter does with too much sun',
  'arrays[].inverter.reconnectSeconds': 'Wait of the solar inverter in seconds',
  'arrays[].inverter.rampSeconds': 'Time in which the solar inverter comes up, in seconds',
  'arrays[].inverter.floorShare': 'Least power to which the solar inverter throttles',
  'arrays[].inverter.outAbove': 'Charge above which the solar inverter goes out',
  'arrays[].inverter.backBelow': 'Charge below which it comes back',
  'arrays[].inverter.phase': 'Phase of the solar inverter',
  'arrays[].inverter.droop': 'Rise of frequency that throttles the solar inverter',
  'gateway.reconnectSeconds': 'Wait before the grid is taken again, in seconds',
  'gateway.mainFuseA': 'Main fuse',
  'gateway.changeoverMs': 'Gap at the changeover',
  'gateway.oneInputForEither': 'One input for either generator or solar',
  'inverter.startingKva': 'Most the battery inverter carries for a second',
  'inverter.minuteKva': 'Most the battery inverter carries for a minute',
  'inverter.chargeKw': 'Charge limit of the battery inverter',
  'inverter.idleW': 'Draw of the battery inverter with no load',
  'inverter.roundTrip': 'Energy that comes back out of the battery',
  'inverter.onOverload': 'What the battery inverter does with too much load',
  'inverter.retryAt': 'When an empty battery inverter tries again',
  'inverter.whenEmpty': 'What the battery inverter does when empty',
  'inverter.wakesOn': 'What wakes an empty battery',
  'inverter.loadsOffAt': 'Charge at which everything goes off',
  'inverter.loadsBackAt': 'Charge at which it comes back',
  'inverter.phases': 'Phases of the battery inverter',
  'inverter.phase': 'Phase of the battery inverter',
  'stack.reserve': 'Reserve of the battery',
  'stack.health': 'What age has left of the battery',
  'stack.place': 'Place of the battery',
  'stack.modulesMax': 'Most modules the base takes',
  'stack.chargeKw': 'Charge limit of the whole battery',
  'stack.dischargeKw': 'Most that the whole battery gives',
  'stack.electronicsW': 'Draw of each module’s electronics',
  'stack.selfDischargePerMonth': 'Charge lost by itself in a month',
  'stack.heaterW': 'Heater of each module',
  'comfort.dropBelow': 'Charge below which the less important goes off',
  'comfort.returnAt': 'Charge above which it returns',
  heatingMonths: 'Months of heating',
  holidays: 'Public holidays',
  'loads[].pieces': 'How many of a load there are',
  'loads[].runs': 'When a load runs',
  'loads[].toleratesMinutes': 'Minutes a load may be off',
  'loads[].holdOver.keeps': 'What a fridge keeps',
  'loads[].holdOver.fromC': 'What it is kept at, in °C',
  'loads[].holdOver.limitC': 'Where it is lost, in °C',
  'loads[].holdOver.untilC': 'What the stated hours reach',
  'loads[].holdOver.atC': 'Room of the stated hours',
  'loads[].holdOver.roomC': 'Room in this house',
  'loads[].overheats.fromC': 'Water of the boiler as a rule',
  'loads[].overheats.limitC': 'Water of the boiler at most',
  'loads[].overheats.stillKwh': 'Heat that its fire still gives',
  'loads[].hotWater.fromC': 'Hot water as a rule',
  'loads[].hotWater.useC': 'Hot water as it is used',
  'loads[].hotWater.coldC': 'Cold water',
  'loads[].hotWater.lossKwhADay': 'What the cylinder loses',
  'loads[].powerFactor': 'Power factor of a load',
  'loads[].startingMultiple': 'Starting current of a load, over running',
  'loads[].phase': 'Phase of a load',
  'loads[].dropOrder': 'Order in which loads go off',
  'loads[].like': 'Taken from the table of typical loads',
  'generator.cansL': 'Fuel in cans',
  'generator.startingKva': 'Most the generator gives for a second',
  'generator.mostShare': 'Most of its rating that the generator gives for long',
  'generator.leastShare': 'Least load an engine likes',
  'generator.startFailsShare': 'Starts of the generator that fail',
  'generator.hoursBetweenFailures': 'Failures of the generator while it runs',
  'generator.readySeconds': 'Seconds until the generator gives power',
  'generator.leastRunMinutes': 'Least run of the generator',
  'generator.startAt': 'Charge at which the generator is wanted',
  'generator.stopAt': 'Charge at which the generator stops',
  'person.minutes': 'Minutes until somebody is there',
  'person.from': 'From when somebody can be counted on',
  'person.to': 'Until when somebody can be counted on',
}
