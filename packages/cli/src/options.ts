// Words of the command line to values; every fault of one call is told at once.

import {
  clockMinute,
  InputError,
  isZone,
  monthName,
  type Problem,
  printable,
  SKIES,
  type SkyKind,
  type StartSoc,
} from '@tideover/core'
import { DateTime, Interval } from 'luxon'

/** What commander hands over: texts, or nothing. */
export type Words = Readonly<Record<string, string | boolean | readonly string[] | undefined>>

/** What options say when they are left out; help shows the same. */
export const DEFAULT_WORDS = {
  sky: 'dull',
  'start-soc': 'reserve',
  winters: '10',
  years: '30',
} as const

/** Every stack and step rides all of them: few. */
export const STACKS_YEARS = '3'

const SHARE_NEED = 'a share 0..1 or a percentage such as 62%'
const HEALTH_NEED = 'a share > 0 and <= 1 or a percentage such as 80%'

/** Reads options one by one and collects what is wrong with them. */
export class OptionReader {
  private readonly problems: Problem[] = []

  constructor(private readonly words: Words) {}

  /** A number, or undefined where the option is absent or wrong (the fault is kept). */
  number(name: string, need: string, ok: (value: number) => boolean): number | undefined {
    const word = this.words[camel(name)]
    if (word === undefined) return undefined
    const value = numberIn(word)
    if (ok(value)) return value
    return this.fault(name, need + commaHint(word), word)
  }

  whole(name: string, min: number, max: number): number | undefined {
    const inside = (value: number): boolean =>
      Number.isInteger(value) && value >= min && value <= max
    return this.number(name, `a whole number ${min}..${max}`, inside)
  }

  /** 1..12; undefined where absent or wrong. A name is told its number. */
  month(): number | undefined {
    const word = this.words.month
    const named = MONTHS.find((month) => isNamed(month, word))
    if (named === undefined) return this.whole('month', 1, 12)
    return this.fault('month', `a whole number 1..12; ${monthName(named)} is ${named}`, word)
  }

  /** 0..1, or a percentage with its sign; undefined where absent or wrong. */
  share(name: string, need = SHARE_NEED, ok = isShare): number | undefined {
    const word = this.words[camel(name)]
    if (word === undefined) return undefined
    const value = shareIn(word)
    if (ok(value)) return value
    return this.fault(name, need + percentHint(word) + commaHint(word), word)
  }

  /** Length of a cut. [h], 30 days at most: so far is every start followed. */
  hours(): number {
    const most = 720
    const need = `a number > 0 and <= ${most} [h]${hoursHint(this.words.hours)}`
    return this.number('hours', need, (value) => value > 0 && value <= most) ?? 24
  }

  sky(allowed: readonly SkyKind[] = SKIES): SkyKind {
    const word = this.words.sky ?? 'dull'
    const found = allowed.find((kind) => kind === word)
    return found ?? this.fault('sky', `one of ${allowed.join(', ')}`, word) ?? 'dull'
  }

  startSoc(): StartSoc {
    const word = this.words.startSoc
    if (word === undefined || word === 'reserve') return 'reserve'
    if (word === 'full') return 'full'
    return this.share('start-soc', `reserve, full, ${SHARE_NEED}`) ?? 'reserve'
  }

  /** Two times of the wall clock such as 22:00-07:00; undefined where absent or wrong. */
  clockSpan(name: string): { from: string; to: string } | undefined {
    const word = this.words[camel(name)]
    if (word === undefined) return undefined
    const [from, to, ...more] = String(word)
      .split('-')
      .map((part) => part.trim())
    const [a, b] = [clockMinute(from ?? ''), clockMinute(to ?? '')]
    if (a !== null && b !== null && a !== b && more.length === 0) return { from: from!, to: to! }
    return this.fault(name, 'two different times of the clock such as 22:00-07:00', word)
  }

  /**
   * A moment; local wall clock of the house's zone where no offset is written. [ms UTC]
   *
   * A time that the clock leaves out in spring is refused; one that it shows twice in autumn is
   * the first of the two.
   */
  moment(name: string, zone: string): number {
    // A blank between date and time is as good as a T.
    const word = String(this.words[camel(name)] ?? '').replace(/^(\S{10}) (?=\d)/, '$1T')
    const time = DateTime.fromISO(word, { zone: isZone(zone) ? zone : 'utc' })
    if (!time.isValid || !/^\d{4}-\d{2}-\d{2}/.test(word)) {
      const isWritten = /^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}|$)/.test(word)
      const more = isWritten ? ', on a day and at a time that there are' : ''
      const need = /^\d{1,2}:\d{2}$/.test(word) ? 'a day with its time' : 'a time'
      this.fault(name, `${need} such as 2025-01-14T18:00Z${more}`, word)
      return Number.NaN
    }
    if (/T.*(Z|[+-]\d{2}(:?\d{2})?)$/i.test(word)) return time.toMillis()
    const written = DateTime.fromISO(word, { zone: 'utc' })
    if (time.toFormat('HH:mm') !== written.toFormat('HH:mm')) {
      this.fault(name, `a time that the clock of ${zone} shows (it is put forward past it)`, word)
    }
    return Math.min(...time.getPossibleOffsets().map((each) => each.toMillis()))
  }

  /** ISO 8601 intervals of a start and a duration; absent: none. */
  intervals(name: string, zone: string): { startMs: number; hours: number }[] {
    const words = this.words[camel(name)]
    return (Array.isArray(words) ? words : []).flatMap((word: string) => {
      const span = Interval.fromISO(word, { zone: isZone(zone) ? zone : 'utc' })
      // Without a date the day would be the machine's.
      const isDated = /^\d{4}-\d{2}-\d{2}T/.test(word)
      if (isDated && span.isValid && span.length('minutes') >= 1) {
        return [{ startMs: span.start!.toMillis(), hours: span.length('hours') }]
      }
      this.fault(name, 'a start and a duration such as 2025-01-14T21:00/PT2H', word)
      return []
    })
  }

  /** A local day of the house's zone; its first millisecond. */
  day(name: string, zone: string): DateTime {
    const word = String(this.words[name] ?? '')
    const time = DateTime.fromISO(word, { zone })
    if (!time.isValid || !/^\d{4}-\d{2}-\d{2}$/.test(word)) {
      this.fault(name, 'a day such as 2025-01-14', word)
    }
    return time
  }

  fault(name: string, need: string, got: unknown): undefined {
    this.problems.push({ where: `--${name}`, need, got: printable(got) })
    return undefined
  }

  /** @throws InputError with every fault met so far */
  done(): void {
    if (this.problems.length > 0) throw new InputError(this.problems)
  }
}

/** Options shared by what asks for a scenario; absent ones are left out. */
export function scenarioOf(reader: OptionReader): {
  modules?: number
  health?: number
  startSoc: StartSoc
  winters: number
  seed?: number
} {
  const modules = reader.whole('modules', 1, 100)
  const health = reader.share('health', HEALTH_NEED, (v) => v > 0 && v <= 1)
  const seed = reader.whole('seed', 0, 2147483647)
  return {
    ...(modules === undefined ? {} : { modules }),
    ...(health === undefined ? {} : { health }),
    ...(seed === undefined ? {} : { seed }),
    startSoc: reader.startSoc(),
    winters: reader.whole('winters', 2, 200) ?? 10,
  }
}

type Word = Words[string]

/** NaN where it is none. */
function numberIn(word: Word): number {
  return typeof word === 'string' && word.trim() !== '' ? Number(word) : Number.NaN
}

function commaHint(word: Word): string {
  return typeof word === 'string' && /^\d+,\d+\s*%?$/.test(word) ? ', written with a point' : ''
}

const MONTHS = Array.from({ length: 12 }, (_, m) => m + 1)

/** `January`, `jan` */
function isNamed(month: number, word: Word | undefined): boolean {
  if (typeof word !== 'string' || !/^[a-z]{3,}$/i.test(word)) return false
  return monthName(month).toLowerCase().startsWith(word.toLowerCase())
}

/** A length with its unit: `24h`, `2d`, `2 days`. */
function hoursHint(word: Word | undefined): string {
  const [, number, unit] = /^(\d+(?:\.\d+)?)\s*(h|d)[a-z]*$/i.exec(String(word)) ?? []
  if (number === undefined) return ''
  return unit!.toLowerCase() === 'h'
    ? `; the number alone: ${number}`
    : `; ${number === '1' ? '1 day is' : `${number} days are`} ${24 * Number(number)}`
}

const isShare = (value: number): boolean => value >= 0 && value <= 1

/** 0.62 or `62 %`, as a display shows it. */
function shareIn(word: Word): number {
  const percent = /^\s*(\d+(?:\.\d+)?)\s*%\s*$/.exec(String(word))?.[1]
  return percent === undefined ? numberIn(word) : Number(percent) / 100
}

/** A bare 62 is asked back and never taken for 62 %, for a bare 1 is the whole. */
function percentHint(word: Word): string {
  const value = numberIn(word)
  if (!(value > 1 && value <= 100)) return ''
  return `; for ${value} % write ${Number((value / 100).toFixed(4))} or ${value}%`
}

/** `startSoc` for `start-soc`, as commander names it. */
export function camel(name: string): string {
  return name.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase())
}
