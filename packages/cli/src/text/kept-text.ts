// What the gaps of a traced cut did to what the loads keep cold, hot or dry.

import {
  type Calendar,
  type Course,
  type CutStory,
  localTime,
  MEDICINE_LEAST_C,
  meanKineticC,
} from '@tideover/core'
import { wrap } from './wrap.js'

/** A line for each critical load that keeps something. */
export function keptLines({ courses, trace }: CutStory, calendar: Calendar): string[] {
  const lines = courses.flatMap((course) => {
    const { name, shown, basis } = course
    if (shown === null) return []
    const worst = worstOf(shown)
    const at = localTime(calendar, trace.from + worst.minute)
    const stays = shown.values.every((value) => value === shown.values[0])
    const told = stays ? `${worst.text} throughout` : `${worst.text} at ${at}${past(course)}`
    return [wrap(`${name}: ${told}${kinetic(course)}. From ${basis}.`)]
  })
  return lines.length === 0 ? [] : ['', 'What the gaps did:', ...lines]
}

type ShownCourse = NonNullable<Course['shown']>

/** The extreme of the cut: the most where warmth does harm, the least where water runs out. */
function worstOf({ values, unit, most }: ShownCourse): { minute: number; text: string } {
  const isWater = unit === 'l'
  let minute = 0
  for (let i = 1; i < values.length; i++) {
    if (isWater ? values[i]! < values[minute]! : values[i]! > values[minute]!) minute = i
  }
  const value = values[minute]!
  if (value >= most) {
    return { minute, text: `${most} °C or more, for heat leak and safety valve to take,` }
  }
  return { minute, text: isWater ? `${value.toFixed(0)} l left` : `${value.toFixed(1)} °C` }
}

/** For how long it was past its limit. */
function past({ shown, lostAt }: Course): string {
  // What it has reached says enough.
  if (shown === null || lostAt === null || shown.values.includes(shown.most)) return ''
  if (shown.unit === 'l') return ', run out'
  const minutes = shown.values.reduce((n, c) => n + (c > shown.limit ? 1 : 0), 0)
  return `, above ${shown.limit} °C for ${(minutes / 60).toFixed(1)} h`
}

/** Mean over the whole log, for medicines. */
function kinetic({ shown }: Course): string {
  if (shown?.keeps !== 'medicine') return ''
  const mean = meanKineticC(shown.values).toFixed(1)
  return `; mean kinetic temperature ${mean} °C (store at ${MEDICINE_LEAST_C} to ${shown.limit} °C)`
}
