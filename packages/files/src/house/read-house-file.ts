// A house file (YAML or JSON) to a plain value, with the line of every field kept.
//
// Nothing is checked here but the writing itself; what a house needs is checked by `core`.

import { InputError, type Problem, printable } from '@tideover/core'
import { type Document, LineCounter, parseDocument, type YAMLError } from 'yaml'
import { readText } from '../text/read-text.js'
import { lineFinder } from './line-of.js'

/** The plain value of a house file and where its fields stand. */
export interface HouseFile {
  /** Groups, lists, texts, numbers, booleans and nulls, as written. */
  readonly plain: unknown
  /**
   * Line of a field, from 1. A field that is not there gives the line of the nearest group that
   * would hold it.
   *
   * @param path  `stack.module.usableKwh`, `loads[2].w` or `loads.2.w`
   */
  readonly lineOf: (path: string) => number
}

/**
 * Reads a house file.
 *
 * @throws InputError where it is missing, a directory, binary, empty, badly written or no group
 *         of fields; each fault one line with `file:line`
 */
export function readHouseFile(path: string): HouseFile {
  return houseFromText(readText(path), path)
}

/** The same from text, for where there is no disk. */
export function houseFromText(text: string, name: string): HouseFile {
  if (text.trim() === '') {
    throw new InputError([
      { where: `${name}:1`, need: 'a house in YAML or JSON', got: 'an empty file' },
    ])
  }
  const lines = new LineCounter()
  const document = parseDocument(text.replace(/^\uFEFF/, ''), { lineCounter: lines })
  const faults = [...document.errors, ...document.warnings]
  if (faults.length > 0) throw new InputError(faults.map((fault) => problemOf(fault, name, text)))
  const plain = plainOf(document, name)
  if (typeof plain !== 'object' || plain === null || Array.isArray(plain)) {
    const got = plain === null ? 'nothing but comments' : printable(plain)
    throw new InputError([
      { where: `${name}:1`, need: 'a group of fields (house:, site:, …)', got },
    ])
  }
  return { plain, lineOf: lineFinder(document, lines) }
}

function plainOf(document: Document, name: string): unknown {
  try {
    return document.toJS()
  } catch (error) {
    const got = firstLine(error instanceof Error ? error.message : String(error))
    throw new InputError([{ where: `${name}:1`, need: 'a file without endless aliases', got }])
  }
}

/** What to write instead, for the slips that are made most. */
const NEEDS: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'indented by spaces',
  DUPLICATE_KEY: 'a field written once',
  BAD_INDENT: 'indented like the lines around it',
  MULTIPLE_DOCS: 'one house (no second part after ---)',
  MULTILINE_IMPLICIT_KEY: 'a field in one line (`name: value`)',
  MISSING_CHAR: 'complete (a quote, comma, colon or bracket is missing)',
  TAG_RESOLVE_FAILED: 'a plain value without a !tag',
}

function problemOf(fault: YAMLError, name: string, text: string): Problem {
  const line = fault.linePos?.[0].line ?? 1
  const written = text.split(/\r?\n/)[line - 1] ?? ''
  const isTab = /^\s*\t/.test(written)
  const need = isTab
    ? 'indented by spaces'
    : (NEEDS[fault.code] ?? `well-formed (${reason(fault.message)})`)
  const got = isTab ? 'a tab' : printable(written.trim())
  return { where: `${name}:${line}`, need, got }
}

function reason(message: string): string {
  return firstLine(message).replace(/ at line \d+, column \d+:?$/, '')
}

function firstLine(message: string): string {
  return message.split('\n', 1)[0] ?? message
}
