// The rules of what a load makes of a gap, field by field and between fields.

import { DEFAULTS } from './defaults.js'
import { choice, group, number } from './fields.js'
import { COLD_KEPT } from './house.js'

const celsius = (doc: string) => number(doc, { unit: '°C', min: -60, max: 100 })

export const holdOver = group('Something kept cold, by the time it holds without power', {
  hours: number('From fromC to untilC, door shut', { unit: 'h', above: 0, max: 336 }),
  keeps: choice('What is kept cold', COLD_KEPT).default(DEFAULTS['loads[].holdOver.keeps'].value),
  fromC: celsius('What it runs at').optional(),
  untilC: celsius('The temperature that the stated hours reach').optional(),
  limitC: celsius('Where it is lost').optional(),
  atC: celsius('The room of the stated hours').optional(),
  roomC: celsius('The room in this house during the cut').optional(),
})

export const overheats = group('A boiler that burns solid fuel, where its pump stops', {
  waterL: number('Water in the boiler itself', { unit: 'l', above: 0, max: 10000 }),
  heatKw: number('Heat of the fire', { unit: 'kW', above: 0, max: 500 }),
  fromC: celsius('Temperature it runs at').optional(),
  limitC: number('Where it is lost', { unit: '°C', min: 40, max: 110 }).optional(),
  stillKwh: number('Heat a fire that dies down with the power still gives', {
    unit: 'kWh',
    above: 0,
    max: 1000,
  }).optional(),
})

export const buffer = group('A sump that fills, or a pressure vessel that empties', {
  litres: number('From where the pump starts to where it is too late', {
    unit: 'l',
    above: 0,
    max: 1e6,
  }),
  litresPerMinute: number('What comes or goes', { unit: 'l/min', above: 0, max: 1000 }),
})

export const hotWater = group('A cylinder of hot water', {
  litres: number('What it holds', { unit: 'l', above: 0, max: 10000 }),
  litresADay: number('Drawn in a day, at useC', { unit: 'l', above: 0, max: 10000 }),
  fromC: celsius('What it is heated to').optional(),
  useC: celsius('What it is drawn at').optional(),
  coldC: celsius('The water that comes in').optional(),
  lossKwhADay: number('What the cylinder loses', { unit: 'kWh a day', min: 0, max: 50 }).optional(),
})
