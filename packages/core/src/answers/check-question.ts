// The door for questions: what is asked is checked as a house is, all faults at once.
//
// A question without its hours, or with a field misspelt, would otherwise be answered: by a horizon
// that is no number every cut is outlasted.

import { z } from 'zod'
import { choice, group, list, number, share, text, yesNo } from '../house/fields.js'
import { InputError } from '../house/problem.js'
import { problemsOf } from '../house/problems-of.js'
import { SKIES } from '../sky/sky.js'
import type { CutQuestion } from './cut-question.js'
import type { PlanQuestion } from './generator-plan/plan-question.js'
import type { NowQuestion } from './now/scene.js'
import type { RideQuestion } from './ride-question.js'
import type { YearQuestion } from './year/year-question.js'

export type QuestionField =
  | keyof RideQuestion
  | keyof YearQuestion
  | keyof PlanQuestion
  | keyof CutQuestion
  | keyof NowQuestion

/** So far can a start be followed. [h] */
const MOST_HOURS = 8760
const MOST_SEED = 2147483647

/**
 * @param asked  the question as it came; fields that are left out or undefined take their defaults
 * @param needs  fields without which there is no question
 * @throws       InputError with every fault: a field missing, unknown, of a wrong type or out of range
 */
export function checkQuestion(asked: object, needs: readonly QuestionField[]): void {
  const shape = Object.entries(fields()).map(([name, field]) => {
    const isNeeded = needs.includes(name as QuestionField)
    return [name, isNeeded ? field : field.optional()] as const
  })
  const result = group('A question', Object.fromEntries(shape)).safeParse(asked)
  if (!result.success) throw new InputError(problemsOf(result.error, asked, 'the question'))
}

function fields(): Record<QuestionField, z.ZodType> {
  const month = number('Month', { unit: '', min: 1, max: 12, whole: true })
  const hours = number('Length of a cut', { unit: 'h', above: 0, max: MOST_HOURS })
  const momentMs = number('A moment, UTC', { unit: 'ms UTC' })
  const years = number('Years', { unit: 'years', min: 1, whole: true })
  const startFails = share('Share of starts that fail')
  return {
    ...{ month, hours, years, startFails },
    months: list('Months', month, 1),
    days: number('Length of a cut', { unit: 'days', above: 0, max: MOST_HOURS / 24 }),
    share: share('Share of starts that must last'),
    sky: choice('Sky', SKIES),
    winters: number('Return period', { unit: 'winters', min: 2, whole: true }),
    seed: number('Seed', { unit: '', min: 0, max: MOST_SEED, whole: true }),
    modules: number('Modules', { unit: '', min: 1, whole: true }),
    health: number('Health', { unit: 'share of 1', above: 0, max: 1 }),
    startSoc: startSoc(),
    generator: yesNo('Whether the generator is counted on'),
    apartDays: number('Days between worst starts', { unit: 'days', min: 1 }),
    syntheticYear: number('Number of the year', { unit: '', min: 0, whole: true }),
    startMs: momentMs,
    atMs: momentMs,
    further: list('Further cuts', group('A cut', { startMs: momentMs, hours })),
    after: number('With the grid back', { unit: 'h', min: 0, max: MOST_HOURS }),
    soc: share('Charge of the display'),
    quiet: group('Quiet hours', { from: text('From'), to: text('To') }),
    chances: group('Chances', {
      startFailsShare: startFails,
      hoursBetweenFailures: number('Running hours', { unit: 'h', above: 0 }).nullable(),
    }),
    setKw: number('Size of a set', { unit: 'kW', above: 0 }),
  }
}

function startSoc(): z.ZodType {
  const need = 'reserve, full or a number 0..1 [share of 1]'
  const isCharge = (charge: unknown): boolean =>
    charge === 'reserve' || charge === 'full' || share('Charge').safeParse(charge).success
  return z.unknown().refine(isCharge, { error: () => need })
}
