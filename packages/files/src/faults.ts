// Collects what is wrong with one file, so that all faults are told at once.

import { InputError, type Problem } from '@tideover/core'

/** More faults than this are counted, not listed. */
const LISTED = 20

/** The faults of one file, in the order they were found. */
export class Faults {
  private readonly listed: Problem[] = []
  private found = 0

  /** @param file  Name of the file as the person gave it; leads every message. */
  constructor(readonly file: string) {}

  get any(): boolean {
    return this.found > 0
  }

  /**
   * Notes one fault.
   *
   * @param line  Line in the file, from 1; null when the file as a whole is at fault
   * @param need  What is needed, with its unit
   * @param got   What came, ready to print
   */
  add(line: number | null, need: string, got: string): void {
    this.found++
    if (this.listed.length >= LISTED) return
    const inOneLine = got.replaceAll(/\s+/g, ' ')
    this.listed.push({ where: this.where(line), need, got: inOneLine })
  }

  /** Notes one fault and throws all of them. */
  refuse(line: number | null, need: string, got: string): never {
    this.add(line, need, got)
    throw this.error()
  }

  /** @throws InputError with every fault found, when there is one. */
  throwIfAny(): void {
    if (this.any) throw this.error()
  }

  private where(line: number | null): string {
    return line === null ? this.file : `${this.file}:${line}`
  }

  private error(): InputError {
    const more = this.found - this.listed.length
    if (more === 0) return new InputError(this.listed)
    const rest = { where: this.file, need: 'free of faults like these', got: `${more} more` }
    return new InputError([...this.listed, rest])
  }
}
