// Answers worked out in threads are those of core, are told as they go, and end when asked.

import { checkHouse, prepare, rideAnswer, switchOffAnswer } from '@tideover/core'
import { houseFromText } from '@tideover/files'
import { type Ground, threaded } from '@tideover/notebook/threads'
import { describe, expect, it } from 'vitest'
import { SMALL_HOUSE } from '../cli/command.js'

const { plain } = houseFromText(SMALL_HOUSE, 'small.yaml')
const house = checkHouse(plain)
const files = { meters: new Map(), outputs: new Map() }
const ground: Ground = { house, files, plain }
const prepared = prepare(house, files)
const question = { month: 1, hours: 6, years: 1 }

describe('an answer from threads', { timeout: 120_000 }, () => {
  it('is that of core, in parts that are told as they are done', async () => {
    const asked = { ...question, years: 4 }
    const told: string[] = []
    const tell = (done: number, of: number | null) => told.push(`${done}/${of}`)
    const answer = await threaded.ride(ground, asked, { threads: 2, tell })
    expect(answer).toEqual(rideAnswer(prepared, asked, plain))
    // Dull, none, clear, and typical in parts of three years: 3 + 2.
    expect(told).toEqual(['0/5', '1/5', '2/5', '3/5', '4/5', '5/5'])
  })

  it('is that of core where one thread does all of it', async () => {
    const answer = await threaded.switchOff(ground, question)
    expect(answer).toEqual(switchOffAnswer(prepared, question, files, plain))
  })

  it('ends with the reason of the signal', async () => {
    const stop = new AbortController()
    const tell = (done: number) => done === 1 && stop.abort(new Error('enough'))
    const run = threaded.ride(ground, { ...question, years: 200 }, { tell, signal: stop.signal })
    await expect(run).rejects.toThrow('enough')
    await expect(threaded.ride(ground, question, { signal: stop.signal })).rejects.toThrow('enough')
  })

  it('says what a thread stumbled on', async () => {
    const run = threaded.ride(ground, { ...question, modules: 9 })
    await expect(run).rejects.toThrow('modules must be')
  })
})
