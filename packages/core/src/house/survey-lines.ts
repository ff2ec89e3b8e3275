// What a line of the survey may say about when and how a load runs.

/** Room in which a cold appliance stands. */
export const ROOMS = ['heated', 'unheated'] as const
export type Room = (typeof ROOMS)[number]

/** A thermostat's on and off times. */
export interface CycleInput {
  onMinutes: number
  offMinutes: number
  /**
   * Inside temperature of a cold appliance; its on-time then grows with the warmth of the room,
   * and the times above are those in a room of 20 °C. [°C]
   */
  insideC?: number | undefined
  /** Where it stands, beside `insideC`; heated when absent. */
  room?: Room | undefined
}

/** So many a day at likely hours, each of whole minutes. */
export interface EventsInput {
  /** Mean of the days on which it runs, of one piece; may be below 1. */
  perDay: number
  minutes: number
  /** Wall-clock spans in which one may begin; any time of the day when absent. */
  at?: string[] | undefined
}

/** Energy that a vehicle takes on each day on which it charges, of one piece. */
export interface ChargingInput {
  kwhPerDay: number
}

/** Days on which it runs: all, those of the heating season, or those of it with colder air. */
export type RunsInput = 'always' | 'heating season' | { below: number }

/** The fields beside power and name; one of `cycle`, `events`, `charging` and `byAir` at most. */
export interface SurveyFields {
  /** The row of the table of typical loads that fills what is left out. */
  like?: string | undefined
  /** Fields that came from that row; set by the check of the house. */
  taken?: readonly string[] | undefined
  cycle?: CycleInput | undefined
  events?: EventsInput | undefined
  charging?: ChargingInput | undefined
  /** Pairs of air temperature [°C] and power [W], rising in temperature; held beyond the ends. */
  byAir?: [number, number][] | undefined
  /** Months in which it runs, 1..12; all when absent. */
  months?: number[] | undefined
  runs: RunsInput
}
