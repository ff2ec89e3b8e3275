// Words of what a fridge or a freezer keeps without power.

import { fullHoldOver, type HoldOver } from '@tideover/core'
import { lengthText } from './numbers.js'

const GUIDANCE: Readonly<Record<HoldOver['keeps'], string>> = {
  food: 'Public guidance counts on 4 hours for food.',
  medicine: 'Public guidance counts on 4 hours for food; for medicine ask who made it.',
  frozen: 'Public guidance counts on 48 hours for a full freezer, 24 for a half full one.',
}

/** What a fridge or a freezer does without power. */
export function coldText(given: HoldOver): string {
  const { fromC, untilC, limitC, hours, atC, roomC, keeps } = fullHoldOver(given)
  const here = roomC === atC ? '' : `; here it has ${roomC} °C`
  return (
    `door shut, it warms from ${fromC} to ${untilC} °C in ${lengthText(hours)} in a room at ${atC} °C` +
    `${here}. Above ${limitC} °C what it keeps may be lost. ${GUIDANCE[keeps]}`
  )
}
