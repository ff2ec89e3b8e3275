// What the rules of a house or a question found wrong, as problems for a person.

import type { z } from 'zod'
import { hintFor } from './hints.js'
import { type Problem, printable } from './problem.js'

/**
 * @param plain  what was checked
 * @param whole  its name, for a fault of no single field: `the house file`
 */
export function problemsOf(error: z.ZodError, plain: unknown, whole: string): Problem[] {
  return error.issues.flatMap((issue) => problemsOfIssue(issue, plain, whole))
}

function problemsOfIssue(issue: z.core.$ZodIssue, plain: unknown, whole: string): Problem[] {
  const path = pathText(issue.path)
  if (issue.code === 'unrecognized_keys') {
    const needs = issue.message.split('\n')
    return issue.keys.map((key, i) => ({
      where: path === '' ? key : `${path}.${key}`,
      need: needs[i] ?? 'a known field',
      got: 'an unknown field',
    }))
  }
  const got = valueAt(plain, issue.path)
  const need = issue.message + hintFor(issue.message, got)
  return [{ where: path || whole, need, got: printable(got) }]
}

/** `loads[2].w` */
export function pathText(path: readonly PropertyKey[]): string {
  let text = ''
  for (const part of path) {
    text += typeof part === 'number' ? `[${part}]` : `${text === '' ? '' : '.'}${String(part)}`
  }
  return text
}

export function valueAt(plain: unknown, path: readonly PropertyKey[]): unknown {
  let value = plain
  for (const part of path) value = (value as Record<PropertyKey, unknown> | undefined)?.[part]
  return value
}
