// What things cost, in the money of the house.

import type { z } from 'zod'
import { group, number } from './fields.js'

export const money = (doc: string): z.ZodNumber => number(doc, { unit: 'money', min: 0, max: 1e6 })

export const prices = group('What steps beside a module cost, in the money of the house', {
  arrayPerKw: money('A kilowatt of peak power more, fitted').optional(),
  generator: money('A small generator started by hand').optional(),
})
