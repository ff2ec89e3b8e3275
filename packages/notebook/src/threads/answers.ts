// The long answers of core, each with its work in threads.

import {
  type DoubtsAnswer,
  type PlanAnswer,
  type PlanQuestion,
  type Prepared,
  prepare,
  type RideAnswer,
  type RideQuestion,
  type RideResult,
  rideFrom,
  rideJobs,
  type StacksAnswer,
  type SwitchOffAnswer,
  type SwitchOffQuestion,
  type YearAnswer,
  type YearQuestion,
} from '@tideover/core'
import type { Answered, Asked, Ground, PartName } from './parts.js'
import { type Running, runParts } from './run-parts.js'

/** Years of the typical sky that a thread takes in one go. */
const YEARS_A_JOB = 3

/** All that a ride rests on, for `rideFrom`. */
export function rideResults(
  ground: Ground,
  prepared: Prepared,
  question: RideQuestion,
  running?: Running,
): Promise<RideResult[]> {
  const jobs = rideJobs(prepared, question, YEARS_A_JOB)
  return runParts(
    ground,
    'ride',
    jobs.map((job) => ({ question, job })),
    running,
  )
}

/** As `rideAnswer`. */
export async function ride(
  ground: Ground,
  question: RideQuestion,
  running?: Running,
): Promise<RideAnswer> {
  const prepared = prepare(ground.house, ground.files)
  const results = await rideResults(ground, prepared, question, running)
  return rideFrom(prepared, question, results, ground.plain)
}

/** As `yearMonth` of all months and `yearFrom`. */
export async function year(
  ground: Ground,
  question: YearQuestion,
  running?: Running,
): Promise<YearAnswer> {
  const asked = Array.from({ length: 12 }, (_, i) => ({ question, month: i + 1 }))
  const months = await runParts(ground, 'month', asked, running)
  return one(ground, 'year', { question, months }, running)
}

/** As `stacksAnswer`. */
export function stacks(
  ground: Ground,
  question: RideQuestion,
  running?: Running,
): Promise<StacksAnswer> {
  return one(ground, 'stacks', { question }, running)
}

/** As `switchOffAnswer`. */
export function switchOff(
  ground: Ground,
  question: SwitchOffQuestion,
  running?: Running,
): Promise<SwitchOffAnswer> {
  return one(ground, 'switchOff', { question }, running)
}

/** As `generatorPlan`. */
export function generator(
  ground: Ground,
  question: PlanQuestion,
  running?: Running,
): Promise<PlanAnswer> {
  return one(ground, 'generator', { question }, running)
}

/** As `doubtsAnswer`. */
export function doubts(
  ground: Ground,
  question: RideQuestion,
  running?: Running,
): Promise<DoubtsAnswer> {
  return one(ground, 'doubts', { question }, running)
}

async function one<Name extends PartName>(
  ground: Ground,
  name: Name,
  asked: Asked<Name>,
  running?: Running,
): Promise<Answered<Name>> {
  const [answer] = await runParts(ground, name, [asked], running)
  return answer as Answered<Name>
}
