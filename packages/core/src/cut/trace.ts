// One cut, minute by minute: a walk with a recorder that settles where each minute's power went.

import { newBalance, settle, settleDark } from '../island/balance.js'
import type { Compiled } from '../island/compile.js'
import { darkDcKw, solarKw } from '../island/solar-columns.js'
import { newState, type State, type StateName, stateName, Used } from '../island/state.js'
import { acSumKw } from '../series/window.js'
import { walk } from './walk.js'

/** Columns of a trace; powers are averages over the minute [kW], energies at its end [kWh]. */
export interface Trace {
  /** Minute of the year's axis of row 0. */
  readonly from: number
  readonly n: number
  readonly demandCriticalKw: Float64Array
  readonly demandComfortKw: Float64Array
  readonly servedCriticalKw: Float64Array
  readonly servedComfortKw: Float64Array
  readonly solarAvailableKw: Float64Array
  readonly solarUsedKw: Float64Array
  readonly generatorKw: Float64Array
  /** Into and out of the grid-forming inverter at its AC side. */
  readonly chargeKw: Float64Array
  readonly dischargeKw: Float64Array
  /** At the terminals of the stack, positive when it discharges. */
  readonly batteryKw: Float64Array
  readonly gridKw: Float64Array
  readonly lossKw: Float64Array
  readonly startStoredKwh: Float64Array
  readonly storedKwh: Float64Array
  /** Fuel left. [l] */
  readonly fuelL: Float64Array
  readonly states: readonly StateName[]
  /** Bits of `Event`. */
  readonly events: Uint32Array
  /** Shed level lived in each minute. */
  readonly levels: Uint8Array
  /** Groups of AC-coupled solar that were in, a bit each. */
  readonly solarIn: Uint8Array
}

/**
 * Traces the whole window.
 *
 * @param storedKwh  at the start, on the energy grid
 */
export function trace(compiled: Compiled, storedKwh: number): Trace {
  return traceSpan(compiled, newState(compiled.rules, storedKwh), 0, compiled.columns.n)
}

/**
 * Traces minutes [from, to) of the window; the state goes on to the end of them, so that a trace
 * may be taken up where another ended.
 */
export function traceSpan(compiled: Compiled, state: State, from: number, to: number): Trace {
  const { columns, rules } = compiled
  const out = emptyTrace(columns.from + from, to - from)
  walk(state, from, to, columns, rules, recorder(compiled, out, from))
  return out
}

function emptyTrace(from: number, n: number): Trace & { states: StateName[] } {
  const column = (): Float64Array => new Float64Array(n)
  return {
    from,
    n,
    demandCriticalKw: column(),
    demandComfortKw: column(),
    servedCriticalKw: column(),
    servedComfortKw: column(),
    solarAvailableKw: column(),
    solarUsedKw: column(),
    generatorKw: column(),
    chargeKw: column(),
    dischargeKw: column(),
    batteryKw: column(),
    gridKw: column(),
    lossKw: column(),
    startStoredKwh: column(),
    storedKwh: column(),
    fuelL: column(),
    states: new Array<StateName>(n),
    events: new Uint32Array(n),
    levels: new Uint8Array(n),
    solarIn: new Uint8Array(n),
  }
}

const SOURCES = ['none', 'solar', 'generator', 'grid'] as const

function recorder(
  compiled: Compiled,
  out: ReturnType<typeof emptyTrace>,
  from: number,
): (minute: number, state: State) => void {
  const { rules, plant, window } = compiled
  const row = newBalance()
  const { dark, lastLevel } = rules
  return (minute, state) => {
    let critical = compiled.loadKw(lastLevel, minute)
    let all = compiled.loadKw(0, minute)
    let served = compiled.loadKw(state.level, minute)
    if (state.ranTogether) {
      critical += compiled.togetherKw(lastLevel, minute)
      all += compiled.togetherKw(0, minute)
      served += compiled.togetherKw(state.level, minute)
    }
    const battery = -state.delta * 60
    const dc = window.dcKw[minute]!
    const standing = compiled.standingKw(minute)
    if (state.level === dark) settleDark(row, darkDcKw(rules, dc), standing, battery)
    else {
      const hasSolar = state.used === Used.solar || state.used === Used.grid
      const acHad = hasSolar ? solarKw(window, state.solarIn, minute) : 0
      settle(row, plant, SOURCES[state.used]!, served, acHad, dc, standing, battery)
    }
    const i = minute - from
    out.demandCriticalKw[i] = critical
    out.demandComfortKw[i] = all - critical
    out.servedCriticalKw[i] = Math.min(critical, served)
    out.servedComfortKw[i] = Math.max(0, served - critical)
    out.solarAvailableKw[i] = acSumKw(window, minute) + dc
    out.solarUsedKw[i] = row.solarUsedKw
    out.generatorKw[i] = row.generatorKw
    out.chargeKw[i] = row.chargeKw
    out.dischargeKw[i] = row.dischargeKw
    out.batteryKw[i] = row.batteryKw
    out.gridKw[i] = row.gridKw
    out.lossKw[i] = row.lossKw
    out.startStoredKwh[i] = state.stored - state.delta
    out.storedKwh[i] = state.stored
    out.fuelL[i] = state.fuelL
    out.states[i] = stateName(state, rules)
    out.events[i] = state.events
    out.levels[i] = state.level
    out.solarIn[i] = state.used === Used.solar || state.used === Used.grid ? state.solarIn : 0
  }
}
