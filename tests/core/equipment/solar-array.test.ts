import { describe, expect, it } from 'vitest'
import { agedPeakKw, arrayDcKw } from '../../../packages/core/src/equipment/array.js'
import { cellTemperatureC } from '../../../packages/core/src/equipment/cell-temperature.js'
import { solarInverterAcKw } from '../../../packages/core/src/equipment/solar-inverter.js'

describe('array', () => {
  it('gives nothing in the dark and never less', () => {
    expect(arrayDcKw(0, -20, 4, -0.0035)).toBe(0)
    expect(arrayDcKw(1000, 400, 4, -0.0035)).toBe(0)
  })

  it('is worn out at last, not below zero', () => {
    expect(agedPeakKw({ peakKw: 4, lossShare: 0.1, ageYears: 300 })).toBe(0)
  })

  it('hands NaN on', () => {
    expect(arrayDcKw(Number.NaN, 25, 4, -0.0035)).toBeNaN()
    expect(arrayDcKw(500, cellTemperatureC(500, Number.NaN, 1), 4, -0.0035)).toBeNaN()
  })
})

describe('solar inverter', () => {
  it('takes its share and cuts off at its rating', () => {
    expect(solarInverterAcKw(2, 0.96, 3.68)).toBeCloseTo(1.92, 12)
    expect(solarInverterAcKw(4.49, 0.96, 3.68)).toBe(3.68)
    expect(solarInverterAcKw(0, 0.96, 3.68)).toBe(0)
  })

  it('a NaN is not clipped into a rating', () => {
    expect(solarInverterAcKw(Number.NaN, 0.96, 3.68)).toBeNaN()
  })
})
