// What is wrong with an input: where, what is needed, what came.
//
// A problem is data; the sentence is made last, so that a command, a notebook and a page can
// each phrase it. All faults of one input travel together in one InputError.

/** One fault of an input. */
export interface Problem {
  /** Path of the field (`stack.module.usableKwh`) or `file:line`. */
  readonly where: string
  /** What is needed, with its unit and range: `a number > 0 [kWh]`. */
  readonly need: string
  /** What came, ready to print: `-5`, `"abc"`, `nothing`. */
  readonly got: string
}

/** The input is at fault. Carries every fault found, never only the first. */
export class InputError extends Error {
  readonly problems: readonly Problem[]

  constructor(problems: readonly Problem[])
  constructor(where: string, need: string, got: unknown)
  constructor(first: readonly Problem[] | string, need = '', got?: unknown) {
    const problems =
      typeof first === 'string' ? [{ where: first, need, got: printable(got) }] : first
    super(problems.map(problemLine).join('\n'))
    this.name = 'InputError'
    this.problems = problems
  }
}

/** One line a person can act on: `stack.modules must be a whole number 1..5, got 9`. */
export function problemLine(problem: Problem): string {
  return `${problem.where} must be ${problem.need}, got ${problem.got}`
}

/** How a value that came is shown in a message; long ones are cut at 60 characters. */
export function printable(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) {
    return String(value)
  }
  const text = typeof value === 'string' ? JSON.stringify(value) : describe(value)
  return text.length > 60 ? `${text.slice(0, 59)}…` : text
}

function describe(value: unknown): string {
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object') return `a group of fields (${Object.keys(value ?? {}).join(', ')})`
  return `a ${typeof value}`
}
