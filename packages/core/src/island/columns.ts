// What depends on time only, compiled for the rule book.
//
// Energies are increments of one minute on the energy grid [kWh]; positive fills the stack.
// Level indices are those of `rules.ts`: 0..lastLevel, holding, dark.

/** What the stack gains in a minute in which the generator runs, and what that burns. */
export interface Burning {
  /** [kWh] */
  delta: number
  /** [l] */
  litres: number
}

/** Nothing as yet; no whole numbers, for which an engine would choose another shape. */
export function newBurning(): Burning {
  return { delta: Number.NaN, litres: Number.NaN }
}

/** The same increments and limits while the thermostats run together, worked out when asked. */
export interface TogetherColumns {
  /** @param mask  groups of AC-coupled solar that are in */
  delta(mask: number, level: number, minute: number): number
  forced(mask: number, level: number, minute: number): number
  generator(level: number, minute: number): number
  /** @param first  whether they all start in this minute */
  overload(level: number, minute: number, first: boolean): boolean
  /** The same for an island that forms after so many minutes off, less than bring them together. */
  overForming(level: number, minute: number, missed: number): boolean
  overGenerator(level: number, minute: number, first: boolean): boolean
  burn(level: number, minute: number, of: Burning): void
}

/** A minute that does not come: nobody is there to be called. */
export const NEVER = 0x7fffffff

export interface Columns {
  /** Minutes in this window. */
  readonly n: number
  /** Position of minute 0 of the window on the axis of the house's year. */
  readonly from: number
  /** 1 while the grid is there. [n] */
  readonly gridUp: Uint8Array
  /** Last minute in which the grid is there, -1 where it never is. */
  readonly lastGrid: number
  /**
   * Charge unlimited, by the groups of AC-coupled solar that are in (a bit each, 0 for none).
   * [mask][level; dark only with none in][n]
   */
  readonly delta: readonly (readonly Float64Array[])[]
  /** What those of them that can trip force on the stack, DC-coupled solar at rest. [mask][level][n] */
  readonly forced: readonly (readonly Float64Array[])[]
  /** Generator running. [level up to lastLevel][n]; empty without one */
  readonly deltaGenerator: readonly Float64Array[]
  /** Grid there, by the groups that are in. [mask][n]; empty where the grid never is */
  readonly deltaGrid: readonly Float64Array[]
  /** Most the temperature lets the stack gain in a minute. [n], Infinity where it sets no limit */
  readonly tempLimit: Float64Array
  /** What the cold puts out of reach: it lifts the thresholds at the empty end. [n] */
  readonly coldFloor: Float64Array
  /** 1 where the inverter cannot carry the peak of the minute. [level up to lastLevel][n] */
  readonly overload: readonly Uint8Array[]
  /** The same for an island that forms in the minute: all that runs starts at once. */
  readonly overForming: readonly Uint8Array[]
  /** 1 where the generator cannot carry the load. [level up to lastLevel][n] */
  readonly overGenerator: readonly Uint8Array[]
  /** The same where the island forms in the minute: all that runs starts on the generator. */
  readonly overGeneratorForming: readonly Uint8Array[]
  /** `retries`: 1 while an empty island is formed to let solar in. [n]; empty for other houses */
  readonly attempt: Uint8Array
  /** Null for a house whose loads have no thermostats. */
  readonly together: TogetherColumns | null
  /** When somebody called in this minute has done it, as an index of the window. [n] */
  readonly personAt: Int32Array
  /** When somebody called in this minute forms an empty island: by day, once the sun can fill it. [n] */
  readonly wakeAt: Int32Array
  /** 1 while such sun is still to come on the same local day. [n]; empty where nobody wakes it */
  readonly sunLater: Uint8Array
  /** 1 where a generator that should be ready in this minute does not start. [n]; empty if never */
  readonly startFails: Uint8Array
  /** 1 where one that runs fails. [n]; empty if never */
  readonly runFails: Uint8Array
  /** Says what the generator burns in a minute. */
  readonly burn: (level: number, minute: number, of: Burning) => void
}

/** Whether the inverter cannot take over what is running as the house leaves the grid. */
export function overloadsAtChangeover(
  columns: Pick<Columns, 'overload' | 'overForming'>,
  rules: { readonly motorsStop: boolean },
  minute: number,
): boolean {
  return (rules.motorsStop ? columns.overForming : columns.overload)[0]![minute] === 1
}
