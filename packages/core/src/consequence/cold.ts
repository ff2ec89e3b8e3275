// A fridge or freezer without power warms towards its room (Newton's law of cooling).
//
//     T(t) = Tr + (T0 - Tr) exp(-t / tau)
//
// The time constant follows from a stated hold-over: from `fromC` to `untilC` in `hours`, door
// shut, in a room at `atC`. With power it cools as hard as its thermostat's cycle shows: one that
// runs a share d of the time to hold T0 at 20 °C would, running on, fall towards Tr - (20 - T0) / d.
// Latent heat is left out: food that thaws holds longer than this says.

import type { HoldOver } from '../house/house.js'
import { COLD, ROOM_C } from '../house/kept.js'
import { type Consequence, temperatureShown, wholeMinutes } from './consequence.js'

/** Share of the time a compressor runs where no cycle is given; common practice, no source. */
const DUTY = 1 / 3

/** A hold-over with nothing left out. */
export type FullHoldOver = { readonly [Key in keyof HoldOver]-?: NonNullable<HoldOver[Key]> }

/** Fills in what was left out. [°C] */
export function fullHoldOver(given: HoldOver): FullHoldOver {
  const { fromC, limitC } = COLD[given.keeps]
  const atC = given.atC ?? ROOM_C
  const limit = given.limitC ?? limitC
  return {
    ...given,
    fromC: given.fromC ?? fromC,
    limitC: limit,
    untilC: given.untilC ?? limit,
    atC,
    roomC: given.roomC ?? atC,
  }
}

/**
 * Time constant of a stated hold-over.
 *
 *     tau = hours / ln((atC - fromC) / (atC - untilC))
 *
 * @returns  [h], > 0
 */
export function coldTimeConstantHours({
  hours,
  fromC,
  untilC,
  atC,
}: Pick<FullHoldOver, 'hours' | 'fromC' | 'untilC' | 'atC'>): number {
  return hours / Math.log((atC - fromC) / (atC - untilC))
}

/**
 * @param given  fromC < untilC < atC and fromC < limitC
 * @param duty   share of the time it runs to hold its temperature in a room at 20 °C; a third where
 *               unknown
 */
export function coldStore(given: HoldOver, duty: number = DUTY): Consequence {
  const hold = fullHoldOver(given)
  const { fromC, limitC, roomC } = hold
  const tau = coldTimeConstantHours(hold) * 60
  const towards = (end: number, from: number, minutes: number): number =>
    end + (from - end) * Math.exp(-minutes / tau)
  const running = roomC - (ROOM_C - fromC) / duty
  return {
    basis: basisOf(hold),
    rest: fromC,
    beginsAtOnce: true,
    afterGap: (c, minutes) => towards(roomC, c, minutes),
    // In a room colder than its thermostat it is never warmer than at rest.
    afterSupply: (c, minutes) =>
      roomC <= fromC ? fromC : Math.max(fromC, towards(running, c, minutes)),
    lostIn: (c) =>
      roomC > limitC
        ? Math.max(0, wholeMinutes(tau * Math.log((roomC - c) / (roomC - limitC))))
        : Number.POSITIVE_INFINITY,
    shown: temperatureShown(limitC, hold.keeps),
  }
}

/**
 * Public guidance, door shut: a fridge 4 h; a freezer 48 h when full, 24 h when half full (USDA
 * Food Safety and Inspection Service, FDA and CDC, for food in a power cut).
 */
const GUIDANCE = {
  food: 'public guidance counts on 4 h',
  medicine: 'public guidance counts on 4 h for food',
  frozen: 'public guidance counts on 48 h full, 24 h half full',
} as const

function basisOf(hold: FullHoldOver): string {
  const { fromC, untilC, hours, atC, roomC, keeps } = hold
  const room = roomC === atC ? '' : `; here ${roomC} °C`
  return (
    `${fromC} to ${untilC} °C in ${hours} h, door shut, in a room at ${atC} °C${room} ` +
    `(${GUIDANCE[keeps]})`
  )
}
