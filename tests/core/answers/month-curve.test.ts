import { checkHouse, hoursTo, monthCurve, prepare, rideAnswer } from '@tideover/core'
import { describe, expect, it } from 'vitest'

// An invented house whose battery lasts about a night.
const prepared = prepare(
  checkHouse({
    house: 'Made up',
    site: { latitudeDeg: 51, longitudeDeg: 4, elevationM: 10, timezone: 'Europe/Brussels' },
    sky: {
      clearness: [0.3, 0.35, 0.4, 0.43, 0.46, 0.47, 0.46, 0.45, 0.42, 0.37, 0.31, 0.27],
      airC: [3, 4, 7, 10, 14, 17, 19, 18, 15, 11, 7, 4],
    },
    arrays: [{ name: 'roof', peakKw: 3, tiltDeg: 35, azimuthDeg: 180, inverter: { ratedKw: 3 } }],
    inverter: { ratedKva: 3 },
    stack: {
      module: { usableKwh: 5, chargeKw: 2.5, dischargeKw: 2.5 },
      modules: 1,
      place: 'house',
    },
    loads: [{ name: 'pump', tier: 'critical', w: 150, toleratesMinutes: 2 }],
  }),
)
const question = { month: 3, hours: 12, years: 2 }

describe('the curve of a month', () => {
  const answer = rideAnswer(prepared, question)

  it.each(['dull', 'typical', 'none'] as const)(
    'agrees with the answer under the sky %s',
    (sky) => {
      const curve = monthCurve(prepared, question, sky, [6, 12, 18])
      const figures = answer.skies[sky]!
      expect(curve.least.share[1]).toBe(figures.share)
      for (const pattern of ['any', 'evening', 'windy'] as const) {
        const there = figures.shareByPattern[pattern]
        expect(curve.byPattern[pattern].share[1], pattern).toBe(there ?? Number.NaN)
      }
      expect(curve.byPattern.any.starts).toBe(figures.starts)
    },
  )

  it('falls where rides end: half last as long as the middle one, none longer than the best', () => {
    const { medianHours, bestHours } = answer.skies.none!
    const curve = monthCurve(prepared, question, 'none', [medianHours, bestHours, bestHours + 1])
    const [middle, best, beyond] = curve.byPattern.any.share
    expect(middle).toBeGreaterThanOrEqual(0.5)
    expect(best).toBeGreaterThan(0)
    expect(beyond).toBe(0)
  })

  it('names the dark spell under dull only', () => {
    expect(monthCurve(prepared, question, 'dull', [6]).spell).toEqual({ winters: 10, days: 1 })
    expect(monthCurve(prepared, { ...question, hours: 30 }, 'dull', [6]).spell?.days).toBe(2)
    expect(monthCurve(prepared, question, 'clear', hoursTo(6)).spell).toBeNull()
  })
})
