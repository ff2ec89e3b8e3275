// The autonomy curve against the estimate of survival of a general library.
//
// Truth: Kaplan-Meier by lifelines 0.30.3, run once; fixtures/autonomy-curve.py holds the script.
// A ride that outlasts the horizon is censored there. The estimate tells which share survives past
// a moment, the curve which share lasts at least as long: it is the estimate just before it.

import { readFileSync } from 'node:fs'
import { autonomyCurve, type CurveRides } from '@tideover/core'
import { describe, expect, it } from 'vitest'

interface Row {
  readonly minute: number
  readonly ended: number
  readonly beyond: number
  readonly before: number
  readonly after: number
}

interface Sample {
  readonly horizon: number
  readonly rows: Row[]
}

function fixture(): Map<string, Sample> {
  const path = new URL('./fixtures/autonomy-curve.csv', import.meta.url)
  const [, ...lines] = readFileSync(path, 'utf8').trimEnd().split('\n')
  const samples = new Map<string, Sample>()
  for (const line of lines) {
    const [name, ...cells] = line.split(',')
    const [horizon, minute, ended, beyond, before, after] = cells.map(Number) as [
      ...[number, number, number, number, number, number],
    ]
    const sample = samples.get(name!) ?? { horizon, rows: [] }
    sample.rows.push({ minute, ended, beyond, before, after })
    samples.set(name!, sample)
  }
  return samples
}

/** The rides of a sample, the longest first, so that their order cannot help. */
function ridesOf({ rows }: Sample): CurveRides {
  const each = rows.flatMap(({ minute, ended, beyond }) => [
    ...new Array(ended).fill([minute, 0]),
    ...new Array(beyond).fill([minute, 1]),
  ])
  each.reverse()
  return {
    minutes: Int32Array.from(each, ([minute]) => minute),
    beyond: Uint8Array.from(each, ([, beyond]) => beyond),
  }
}

const SAMPLES = fixture()

/** Both divide counts in doubles; the fixture has 15 digits. */
const CLOSE = 1e-13

describe.each([...SAMPLES.keys()])('rides of the sample "%s"', (name) => {
  const sample = SAMPLES.get(name)!
  const { horizon, rows } = sample
  const at = (minutes: readonly number[]): Float64Array =>
    autonomyCurve(
      [ridesOf(sample)],
      minutes.map((minute) => minute / 60),
      horizon,
    ).share

  it('last as long as the estimate says, at every minute at which some end', () => {
    const share = at(rows.map(({ minute }) => minute))
    for (const [i, { minute, before }] of rows.entries()) {
      expect(Math.abs(share[i]! - before), `at ${minute} min`).toBeLessThanOrEqual(CLOSE)
    }
  })

  it('fall to it a minute later, and past the horizon are told only where all have ended', () => {
    const share = at(rows.map(({ minute }) => minute + 1))
    for (const [i, { minute, after }] of rows.entries()) {
      if (minute < horizon) expect(Math.abs(share[i]! - after)).toBeLessThanOrEqual(CLOSE)
    }
    const isOpen = rows.some(({ beyond }) => beyond > 0)
    expect(at([horizon + 1])[0]).toBe(isOpen ? Number.NaN : 0)
  })
})

it('the fixture holds samples with and without rides beyond the horizon', () => {
  expect([...SAMPLES.keys()]).toEqual(['few', 'spread', 'two kinds', 'all end', 'none ends'])
  const beyond = [...SAMPLES.values()].map(({ rows }) => rows.reduce((n, r) => n + r.beyond, 0))
  expect(beyond[0]).toBe(2)
  expect(beyond[3]).toBe(0)
  expect(beyond[4]).toBe(25)
})
