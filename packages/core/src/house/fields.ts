// Building blocks of the house rules: each field says what it needs, once.
//
// The same text serves the message to a person ("must be a number 0..90 [deg]") and the
// description in the JSON Schema that editors show.

import { closest } from 'fastest-levenshtein'
import { z } from 'zod'
import { clockMinute } from '../axis/calendar.js'

export interface NumberNeed {
  readonly unit: string
  readonly min?: number
  readonly max?: number
  /** The smallest value itself is refused: `> 0`. */
  readonly above?: number
  readonly whole?: boolean
}

/** The need of a number in words: `a number > 0 [kWh]`, `a whole number 1..12`. */
export function numberNeed({ unit, min, max, above, whole }: NumberNeed): string {
  const kind = whole ? 'a whole number' : 'a number'
  const floor = above === undefined ? min : above
  const sign = above === undefined ? '>=' : '>'
  let range = ''
  if (floor !== undefined && max !== undefined) {
    range = above === undefined ? ` ${floor}..${max}` : ` > ${floor} and <= ${max}`
  } else if (floor !== undefined) range = ` ${sign} ${floor}`
  else if (max !== undefined) range = ` <= ${max}`
  return `${kind}${range}${unit === '' ? '' : ` [${unit}]`}`
}

/** A number with its unit and range. */
export function number(doc: string, limits: NumberNeed): z.ZodNumber {
  const need = numberNeed(limits)
  let field = z.number({ error: () => need })
  if (limits.whole) field = field.int({ error: () => need })
  if (limits.min !== undefined) field = field.min(limits.min, { error: () => need })
  if (limits.above !== undefined) field = field.gt(limits.above, { error: () => need })
  if (limits.max !== undefined) field = field.max(limits.max, { error: () => need })
  return field.describe(`${doc}: ${need}`)
}

/** A share of a whole, 0..1; somebody who writes 80 for 80 % is told so by the range. */
export function share(doc: string, min = 0, max = 1): z.ZodNumber {
  return number(doc, { unit: 'share of 1', min, max })
}

/** A text that says something: not empty, at most 200 characters. */
export function text(doc: string): z.ZodString {
  const need = 'a text of 1 to 200 characters'
  return z
    .string({ error: () => need })
    .trim()
    .min(1, { error: () => need })
    .max(200, { error: () => need })
    .describe(`${doc}: ${need}`)
}

/** A text checked by a rule of its own. */
export function checkedText(doc: string, need: string, ok: (value: string) => boolean) {
  return z
    .string({ error: () => need })
    .refine(ok, { error: () => need })
    .describe(`${doc}: ${need}`)
}

/** A span of the clock on the wall; it may run over midnight. */
export function span(doc: string) {
  return checkedText(doc, 'a wall-clock span such as 06:30-08:00', isSpan)
}

function isSpan(value: string): boolean {
  const parts = value.split('-')
  return parts.length === 2 && parts.every((part) => clockMinute(part.trim()) !== null)
}

export function yesNo(doc: string): z.ZodBoolean {
  const need = 'true or false'
  return z.boolean({ error: () => need }).describe(`${doc}: ${need}`)
}

/** One of a few words. */
export function choice<const T extends readonly [string, ...string[]]>(doc: string, words: T) {
  const need = `one of ${words.join(', ')}`
  return z.enum(words, { error: () => need }).describe(`${doc}: ${need}`)
}

/** Twelve numbers, January first. */
export function months(doc: string, limits: NumberNeed) {
  const need = `a list of 12 numbers, January first, each ${numberNeed(limits)}`
  return z
    .array(number(doc, limits), { error: () => need })
    .length(12, { error: () => need })
    .describe(`${doc}: ${need}`)
}

export function list<T extends z.ZodType>(doc: string, of: T, min = 0) {
  const need = min > 0 ? `a list of at least ${min}` : 'a list'
  return z
    .array(of, { error: () => need })
    .min(min, { error: () => need })
    .describe(doc)
}

/** A group of named fields; any other name is refused with the nearest known one. */
export function group<const T extends z.core.$ZodLooseShape>(doc: string, shape: T) {
  const known = Object.keys(shape)
  return z
    .strictObject(shape, {
      error: (issue) =>
        issue.code === 'unrecognized_keys'
          ? unknownNeed((issue as unknown as { keys: string[] }).keys, known)
          : `a group of fields (${known.join(', ')})`,
    })
    .describe(doc)
}

/** One sentence a key, parted by a line break: the checker splits them into one problem each. */
function unknownNeed(keys: readonly string[], known: readonly string[]): string {
  return keys
    .map((key) =>
      /^\d+$/.test(key)
        ? 'written with a decimal point (3.68): a comma parts two fields'
        : `a known field (did you mean ${nearest(key, known)}? known: ${known.join(', ')})`,
    )
    .join('\n')
}

/** The known field that begins alike, else the one spelt most alike. */
function nearest(key: string, known: readonly string[]): string {
  const alike = known.filter((field) => field.toLowerCase().startsWith(key.toLowerCase()))
  return alike[0] ?? closest(key, known)
}
