// The parts of work that a thread knows to do, by name.

import {
  doubtsAnswer,
  generatorPlan,
  type House,
  type HouseFiles,
  type PlanQuestion,
  type Prepared,
  type RideJob,
  type RideQuestion,
  runRideJob,
  type SwitchOffQuestion,
  stacksAnswer,
  switchOffAnswer,
  type YearMonth,
  type YearQuestion,
  yearFrom,
  yearMonth,
} from '@tideover/core'

/** A checked house with what it names: what a thread is started with. */
export interface Ground {
  readonly house: House
  readonly files: HouseFiles
  /** The house as it was read, to tell which defaults an answer leans on. */
  readonly plain?: unknown
}

interface Ready extends Ground {
  readonly prepared: Prepared
}

/** Told within a part, where it tells anything. */
export type Told = (done: number, of: number | null) => void

interface Asking<Question> {
  readonly question: Question
}

/** Counts where a part of core tells that something is done, not how much there is. */
function counted(told: Told): () => void {
  let done = 0
  return () => told(++done, null)
}

export const PARTS = {
  ride: ({ prepared }: Ready, { question, job }: Asking<RideQuestion> & { job: RideJob }) =>
    runRideJob(prepared, question, job),
  month: ({ prepared }: Ready, { question, month }: Asking<YearQuestion> & { month: number }) =>
    yearMonth(prepared, question, month),
  year: (
    { prepared, files, plain }: Ready,
    { question, months }: Asking<YearQuestion> & { months: readonly YearMonth[] },
    told: Told,
  ) => yearFrom(prepared, question, months, { plain, files }, counted(told)),
  stacks: ({ prepared, files, plain }: Ready, { question }: Asking<RideQuestion>, told: Told) =>
    stacksAnswer(prepared, files, question, { plain, tell: told }),
  switchOff: (
    { prepared, files, plain }: Ready,
    { question }: Asking<SwitchOffQuestion>,
    told: Told,
  ) => switchOffAnswer(prepared, question, files, plain, counted(told)),
  generator: ({ prepared, plain }: Ready, { question }: Asking<PlanQuestion>, told: Told) =>
    generatorPlan(prepared, question, plain, counted(told)),
  doubts: ({ prepared, plain }: Ready, { question }: Asking<RideQuestion>, told: Told) =>
    doubtsAnswer(prepared, question, plain, counted(told)),
} as const

type Parts = typeof PARTS
export type PartName = keyof Parts
/** What a part is asked with, and what it answers. */
export type Asked<Name extends PartName> = Parameters<Parts[Name]>[1]
export type Answered<Name extends PartName> = ReturnType<Parts[Name]>
