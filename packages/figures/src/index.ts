// Results of the simulator as figures.

export { type Figure, figureJson, type Layout, type Trace } from './figure.js'
