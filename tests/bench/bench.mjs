// What a simulated year costs, measured in one run on one machine.
//
// Compare figures of one run only; the last line is one JSON object. Least of several rounds for
// what is short, one round for what is long. Every result is consumed, so that nothing is skipped.

import { spawnSync } from 'node:child_process'
import { cpus } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import {
  calendarOf,
  checkHouse,
  compile,
  equip,
  luck,
  newScratch,
  newState,
  onGrid,
  pass,
  planeGeometry,
  prepare,
  step,
  sunYear,
  trace,
  typicalOf,
  windowOf,
} from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { carriedOf, Player } from '@tideover/page'
import { getPosition } from 'suncalc'
import { STACKS_WORKERS, stacksMs } from './stacks.mjs'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
const HORIZON = 30 * 1440
const SAMPLE = 500
const STEPPED_MINUTES = 168 * 60

/** Least time of some rounds. [ms] */
function least(rounds, work) {
  let best = Number.POSITIVE_INFINITY
  for (let round = 0; round < rounds; round++) {
    const from = performance.now()
    consume(work())
    best = Math.min(best, performance.now() - from)
  }
  return best
}

let eaten = 0
function consume(value) {
  if (!Number.isFinite(value)) throw new Error(`a round gave ${value}`)
  eaten += value
}

// First of all: a process inherits the greatest memory of the one that starts it.
const cold = coldRide()

const loaded = loadHouse(join(ROOT, 'data-samples/croft.yaml'))
const croft = prepare(loaded.house, loaded.files)
const { calendar, house } = croft
const { n } = calendar
const sky = typicalOf(croft, house.seed, 30)
const scratch = newScratch(croft)

const figures = {}

figures.sunOnlyMsPerYear = least(3, () => {
  let sum = 0
  const { latitudeDeg, longitudeDeg } = house.site
  for (let i = 0; i < n; i++) {
    const date = new Date(calendar.startMs + i * 60000 + 30000)
    sum += getPosition(date, latitudeDeg, longitudeDeg).altitude
  }
  return sum
})
figures.wallClockMsPerYear = least(5, () => calendarOf(2025, 'Europe/London').wallMinute[1000])
// Sun, clear sky, one synthetic year of minutes and one array; loads and calendar are made already.
figures.seriesMsPerYear = least(5, () => {
  const sun = sunYear(house, calendar)
  const geometry = planeGeometry(sun.sun, house.arrays[0])
  const fresh = { ...croft, sun, arrays: [{ ...croft.arrays[0], geometry }] }
  return windowOf(fresh, typicalOf(fresh, house.seed, 1), newScratch(fresh), 0, 0, n).acKw[0][600]
})

const equipped = equip(croft, {})
const window = windowOf(croft, sky, scratch, 0, 0, n + HORIZON)
const build = () => compile(house, calendar, croft.demand, equipped.plant, equipped.rules, window)
figures.columnsMsPerYear = least(3, () => build().columns.delta[0][0][9]) * (n / window.n)
const compiled = build()

figures.bareLoopNsPerMinute = nsPerMinute(bareLoop)
figures.copyLoopNsPerMinute = nsPerMinute(copyLoop)
const yearWindow = windowOf(croft, sky, scratch, 0, 0, n)
const year = compile(house, calendar, croft.demand, equipped.plant, equipped.rules, yearWindow)
figures.traceNsPerMinute = nsPerMinute(() => trace(year, equipped.startKwh).storedKwh[n - 1])

const plain = plainCase()
figures.plainPassMsPerYear = least(5, () => passOf(plain))
figures.plainSteppedMsPerYear = least(3, () => steppedOf(plain)) * SAMPLE
hardCases()
figures.passMsPerYear = least(1, () => passOf({ compiled, startKwh: equipped.startKwh }))
figures.steppedMsPerYear =
  least(1, () => steppedOf({ compiled, startKwh: equipped.startKwh })) * SAMPLE

figures.stacksMs = await stacksMs()
figures.replayMs = replayMs()
Object.assign(figures, cold)
figures.node = process.version
figures.cpu = cpus()[0]?.model ?? 'unknown'

for (const [name, value] of Object.entries(figures)) {
  const shown = typeof value === 'number' ? value.toFixed(value < 100 ? 2 : 0) : value
  console.log(`${name.padEnd(24)} ${shown}`)
}
console.log(`(stacksMs on ${STACKS_WORKERS} workers)`)
console.log(`(sum of all results, so that none was skipped: ${eaten.toExponential(3)})`)
console.log(JSON.stringify(figures))

function nsPerMinute(work) {
  return (least(5, work) * 1e6) / n
}

/** The three-line clamp-and-add loop. */
function bareLoop() {
  const delta = compiled.columns.delta[1][0]
  let stored = 1
  for (let i = 0; i < n; i++) stored = Math.min(8, Math.max(0, stored + delta[i]))
  return stored
}

/** Writing 15 columns of a year. */
function copyLoop() {
  const from = compiled.columns.delta[1][0]
  const columns = Array.from({ length: 15 }, () => new Float64Array(n))
  for (let i = 0; i < n; i++) for (const column of columns) column[i] = from[i]
  return columns[14][n - 1]
}

/**
 * One tier, one clamp: solar that throttles, no bands that bind, no generator; or, changed, one of
 * the houses on which the pass might take long.
 */
function plainCase({ w = 250, onIsland = 'throttles', kw = house.arrays[0].peakKw } = {}) {
  const { generator: _, person: __, comfort: ___, heatingMonths: ____, ...rest } = house
  const { wakesOn: _____, ...inverter } = house.inverter
  const reconnectSeconds = onIsland === 'trips' ? 180 : 20
  const ratedKw = Math.max(kw, house.arrays[0].inverter.ratedKw)
  const bare = checkHouse({
    ...JSON.parse(JSON.stringify({ ...rest, inverter })),
    arrays: [
      {
        ...house.arrays[0],
        peakKw: kw,
        inverter: { ...house.arrays[0].inverter, ratedKw, onIsland, reconnectSeconds },
      },
    ],
    stack: { ...house.stack, place: 'house' },
    loads: [{ name: 'all', tier: 'critical', w }],
  })
  const prepared = prepare(bare)
  const { plant, rules, startKwh } = equip(prepared, {})
  const wide = windowOf(prepared, sky, scratch, 0, 0, n + HORIZON)
  return { compiled: compile(bare, calendar, prepared.demand, plant, rules, wide), startKwh }
}

/** What may make a pass long: rides of weeks, an array far too large, starts at any charge. */
function hardCases() {
  const anyCharge = (name) => {
    const { capacityKwh } = plain.compiled.rules
    const charge = (i) => onGrid(capacityKwh * (0.2 + 0.8 * luck(1, name, i)))
    return { ...plain, startKwh: Float64Array.from({ length: n }, (_, i) => charge(i)) }
  }
  const cases = {
    lightLoadPassMsPerYear: () => plainCase({ w: 31 }),
    trippingPassMsPerYear: () => plainCase({ onIsland: 'trips', kw: 3 * 4.2 }),
    startColumnPassMsPerYear: () => anyCharge(5),
  }
  for (const [name, make] of Object.entries(cases)) {
    const hard = make()
    figures[name] = least(2, () => passOf(hard))
  }
}

function passOf({ compiled: { columns, rules }, startKwh }) {
  return pass(columns, rules, n, startKwh, HORIZON).length
}

/** A random 1 in 500 of the starts, each at most 168 h. */
function steppedOf({ compiled: { columns, rules }, startKwh }) {
  let sum = 0
  for (let k = 0; k < n / SAMPLE; k++) {
    const start = Math.floor(luck(1, 99, k) * n)
    const state = newState(rules, onGrid(startKwh))
    for (let i = start; i < start + STEPPED_MINUTES; i++) step(state, i, columns, rules)
    sum += state.stored
  }
  return sum
}

/** The middle one of eleven cuts of the customer's page, each on another day, series included. */
function replayMs() {
  const { modules, health } = equipped
  const asked = { month: 1, hours: 24, winters: 10, seed: 1, modules, health, startSoc: 'reserve' }
  const player = new Player(carriedOf(croft, loaded.files, asked))
  const times = Array.from({ length: 14 }, (_, k) => {
    const from = performance.now()
    const choice = { month: 1, day: 2 * k + 1, hour: k, hours: 24, sky: 'dull', off: [] }
    consume(player.play(choice).trace.storedKwh[0])
    return performance.now() - from
  })
  return times.slice(3).sort((a, b) => a - b)[5]
}

/** A whole process, 30 years of the croft; memory as the process itself saw it. */
function coldRide() {
  const command = join(ROOT, 'packages/cli/dist/main.js')
  const report = `process.on('exit', () => console.error(process.resourceUsage().maxRSS))`
  const args = ['--import', `data:text/javascript,${report}`, command]
  const from = performance.now()
  const { stderr, status } = spawnSync(
    process.execPath,
    [...args, 'ride', '--month', '1', '--hours', '24'],
    { encoding: 'utf8' },
  )
  if (status !== 0) throw new Error(stderr)
  const kb = Number(stderr.trim().split('\n').at(-1))
  return { coldRideMs: performance.now() - from, coldRideMb: kb / 1024 }
}
