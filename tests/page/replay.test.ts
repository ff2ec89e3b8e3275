// A cut played from what a page carries is the cut that trace traces, for a house with a meter file.

import { inflateRawSync } from 'node:zlib'
import { prepare, traceCut } from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Carried } from '../../packages/page/src/replay/carried.js'
import { carriedOf, packed } from '../../packages/page/src/replay/carry.js'
import { type Choice, Player, questionOf, without } from '../../packages/page/src/replay/player.js'
import { SAMPLES } from '../cli/command.js'

const ASKED = { month: 1, hours: 24, winters: 10, seed: 3, modules: 3, health: 0.8 } as const
const { house, files } = loadHouse(`${SAMPLES}bungalow.yaml`)
const prepared = prepare(house, files)

let carried: Carried
let player: Player

beforeAll(() => {
  // As a page stores it and a browser reads it.
  const { deflated } = packed(carriedOf(prepared, files, { ...ASKED, startSoc: 'reserve' }))
  carried = JSON.parse(inflateRawSync(Buffer.from(deflated, 'base64')).toString()) as Carried
  player = new Player(carried)
}, 60_000)

function expectSame(choice: Choice): void {
  const played = player.play(choice)
  const { syntheticYear, ...question } = questionOf(carried, player.prepared, choice)
  const { off, sky } = choice
  const switched = off.length === 0 ? prepared : prepare(without(house, off), files)
  // `dull` and `none` choose their winter themselves, from the records of the house.
  const year = sky === 'typical' ? { syntheticYear } : {}
  const traced = traceCut(switched, { ...question, ...year } as typeof question)
  expect(played.syntheticYear).toBe(traced.syntheticYear)
  expect(played.events).toEqual(traced.events)
  expect(Buffer.from(played.trace.storedKwh.buffer)).toEqual(
    Buffer.from(traced.trace.storedKwh.buffer),
  )
  expect([...played.trace.fuelL]).toEqual([...traced.trace.fuelL])
}

describe('the bungalow, whose load is metered, played from its page', () => {
  const evening = { month: 1, day: 14, hour: 18, hours: 24, sky: 'dull', off: [] } as const

  it('has the trace of the command, to the bit', () => {
    expectSame(evening)
    expectSame({ month: 6, day: 3, hour: 9, hours: 48, sky: 'typical', off: [] })
    expectSame({ month: 2, day: 28, hour: 12, hours: 12, sky: 'none', off: [] })
  })

  it('has it over the clock changes and over New Year', () => {
    // America/New_York: 9 March and 2 November 2025.
    expectSame({ month: 3, day: 9, hour: 1, hours: 24, sky: 'dull', off: [] })
    expectSame({ month: 11, day: 2, hour: 0, hours: 24, sky: 'dull', off: [] })
    expectSame({ month: 12, day: 31, hour: 3, hours: 72, sky: 'dull', off: [] })
  })

  it('has it with a load off that the meter holds, and with the metered rest off', () => {
    const asItWas = player.play(evening).trace.storedKwh.at(-1)
    expectSame({ ...evening, off: ['well pump'] })
    expectSame({ ...evening, off: ['rest of the house', 'refrigerator'] })
    expect(player.play(evening).trace.storedKwh.at(-1)).toBe(asItWas)
  })
})
