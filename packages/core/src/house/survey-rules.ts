// The rules of the fields of a survey line, one by one.

import { z } from 'zod'
import { DEFAULTS } from './defaults.js'
import { choice, group, list, number, span } from './fields.js'
import { ROOMS } from './survey-lines.js'
import { kindNeed } from './typical-loads.js'
import { TYPICAL_KINDS } from './typical-rows.js'

const month = number('A month', { unit: '', min: 1, max: 12, whole: true })

const RUNS_NEED = 'always, heating season, or { below: a number -30..40 [°C] }'

/** Fields of a load that say when and how it runs. */
export const surveyFields = {
  like: z
    .enum(TYPICAL_KINDS, { error: ({ input }) => kindNeed(input) })
    .describe('Kind in the table of typical loads, which fills what is left out')
    .optional(),
  cycle: group('On and off times of a thermostat', {
    onMinutes: number('On', { unit: 'min', min: 1, max: 1440, whole: true }),
    offMinutes: number('Off', { unit: 'min', min: 0, max: 1440, whole: true }),
    insideC: number('Inside of a cold appliance whose on-time grows in a warm room', {
      unit: '°C',
      min: -90,
      max: 19,
    }).optional(),
    room: choice('Room in which it stands, beside insideC', ROOMS).optional(),
  }).optional(),
  events: group('So many a day at likely hours', {
    perDay: number('Mean number a day', { unit: '', above: 0, max: 288 }),
    minutes: number('Length of each', { unit: 'min', min: 1, max: 720, whole: true }),
    at: list('Hours in which one may begin', span('A span'), 1).optional(),
  }).optional(),
  charging: group('Energy that a vehicle takes on a day on which it charges', {
    kwhPerDay: number('Energy of a charging day', { unit: 'kWh', above: 0, max: 300 }),
  }).optional(),
  byAir: list(
    'Pairs of air temperature [°C] and power [W], rising in temperature',
    z.tuple(
      [
        number('Air temperature', { unit: '°C', min: -60, max: 60 }),
        number('Power', { unit: 'W', min: 0, max: 100000 }),
      ],
      { error: () => 'a pair [air temperature °C, power W]' },
    ),
    2,
  ).optional(),
  months: list('Months in which it runs', month, 1).optional(),
  runs: z
    .union(
      [
        choice('Season', ['always', 'heating season']),
        group('Days of the heating season whose mean air is colder', {
          below: number('Limit of the mean air of the day', { unit: '°C', min: -30, max: 40 }),
        }),
      ],
      { error: () => RUNS_NEED },
    )
    .describe(`Days on which it runs: ${RUNS_NEED}`)
    .default(DEFAULTS['loads[].runs'].value),
}
