// What was likely meant by a value of a house file that is refused.

import { closest, distance } from 'fastest-levenshtein'

/** A word of a choice of which no more than this share is spelt otherwise is meant. */
const MOST_OTHERWISE = 1 / 3

/**
 * The end of a sentence that tells what is needed, such as `; 40 % is written 0.4`; empty where
 * nobody can guess.
 *
 * @param need  as the field says it
 * @param got   what came
 */
export function hintFor(need: string, got: unknown): string {
  if (need.startsWith('a list')) return listHint(got)
  if (need.includes('[share of 1]')) return shareHint(got) ?? numberHint(got)
  if (/^a (whole )?number/.test(need)) return wattsHint(need, got) ?? numberHint(got)
  if (need === 'true or false') return yesNoHint(got)
  if (need.startsWith('one of ')) return choiceHint(need.slice('one of '.length).split(', '), got)
  return ''
}

function listHint(got: unknown): string {
  if (typeof got !== 'string' && typeof got !== 'number') return ''
  return `; one alone stands in brackets too: [${JSON.stringify(got)}]`
}

/** `40%`, `40 %`, 40 */
function shareHint(got: unknown): string | null {
  const percent = /^\s*(\d+(?:[.,]\d+)?)\s*%\s*$/.exec(String(got))?.[1]
  const value = percent === undefined ? got : Number(percent.replace(',', '.'))
  if (typeof value !== 'number' || !(value <= 100)) return null
  if (percent === undefined && !(value > 1)) return null
  return `; ${value} % is written ${Number((value / 100).toFixed(4))}`
}

/** 4000 where kilowatts are asked for. */
function wattsHint(need: string, got: unknown): string | null {
  if (typeof got !== 'number' || got < 1000) return null
  const unit = /\[k(W|VA)\]/.exec(need)?.[1]
  return unit === undefined ? null : `; ${got} ${unit} is written ${got / 1000}`
}

/** `4,4`, `90 W`, `"90"` */
function numberHint(got: unknown): string {
  if (typeof got !== 'string') return ''
  const [, number, unit] = /^\s*(-?\d+(?:[.,]\d+)?)\s*(\S*)\s*$/.exec(got) ?? []
  if (number === undefined) return ''
  if (number.includes(',')) return `; with a decimal point: ${number.replace(',', '.')}`
  if (unit === '') return `; without quotation marks: ${number}`
  return '; the number alone, in the unit that is asked for'
}

function yesNoHint(got: unknown): string {
  if (typeof got !== 'string') return ''
  if (/^(yes|on|y)$/i.test(got)) return `; ${got} is written true`
  return /^(no|off|n)$/i.test(got) ? `; ${got} is written false` : ''
}

/** What somebody else might call a word of a choice. */
const SAID_ELSEWHERE: Readonly<Record<string, string>> = {
  manual: 'by hand',
  manually: 'by hand',
  hand: 'by hand',
  auto: 'automatic',
  essential: 'critical',
  vital: 'critical',
  optional: 'comfort',
  grid: 'gridOnly',
  garage: 'attached garage',
}

function choiceHint(words: readonly string[], got: unknown): string {
  if (typeof got !== 'string' || got === '') return ''
  const said = SAID_ELSEWHERE[got.toLowerCase()]
  if (said !== undefined && words.includes(said)) return `; did you mean ${said}?`
  const near = closest(got.toLowerCase(), words)
  const otherwise = distance(got.toLowerCase(), near) / near.length
  return otherwise <= MOST_OTHERWISE ? `; did you mean ${near}?` : ''
}
