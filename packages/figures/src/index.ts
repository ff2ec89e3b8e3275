// Results of the simulator as figures, each with its numbers as rows of a table.

export { type AutonomyFigureOptions, autonomyFigure } from './autonomy-figure.js'
export { type AutonomyGridOptions, autonomyGridFigure } from './autonomy-grid-figure.js'
export { autonomyRows, type NamedCurve, shareAt } from './autonomy-rows.js'
export { type CutFigureOptions, cutFigure } from './cut-figure.js'
export { type CutRowsOptions, cutRows } from './cut-rows.js'
export { decimate } from './decimate.js'
export { type DoubtsFigureOptions, doubtsFigure } from './doubts-figure.js'
export { type DoubtsDrawn, doubtsRows } from './doubts-rows.js'
export { type EnergyFigureOptions, energyFigure } from './energy-figure.js'
export { energyRows, type NamedLedger } from './energy-parts.js'
export { type Figure, figureJson, type Layout, type Trace } from './figure.js'
export { type FuelFigureOptions, fuelFigure } from './fuel-figure.js'
export { type FuelDrawn, fuelRows } from './fuel-rows.js'
export {
  type MonthHoursCellsOptions,
  type MonthHoursOf,
  monthHoursCells,
  type ShadedCell,
  type ShadedMonth,
  type YearMonths,
} from './month-hours-cells.js'
export {
  type MonthHoursAnswer,
  type MonthHoursOptions,
  monthHoursFigure,
  monthHoursRows,
} from './month-hours-figure.js'
export {
  type MonthReserve,
  type ReserveFigureOptions,
  reserveFigure,
  reserveRows,
} from './reserve-figure.js'
export { type StacksFigureOptions, stacksFigure } from './stacks-figure.js'
export { type StacksDrawn, stacksRows } from './stacks-rows.js'
export { AREAS, BAD, GRID, INK, LINES, NIGHT, PARTS, QUIET } from './style.js'
export {
  durationText,
  hoursDown,
  percentDown,
} from './words.js'
export {
  type WorstDrawn,
  type WorstFigureOptions,
  worstFigure,
  worstRows,
} from './worst-figure.js'
export type { StoredMinutes } from './year-stored-days.js'
export { type YearStoredOptions, yearStoredFigure } from './year-stored-figure.js'
export { yearStoredRows } from './year-stored-rows.js'
export { type YearsFigureOptions, yearsFigure, yearsRows } from './years-figure.js'
