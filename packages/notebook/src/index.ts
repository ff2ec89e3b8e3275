// What a cell of a notebook needs.

export { type Column, frame } from './frame.js'
export { setUp } from './set-up.js'
export { figureHtml, type ShowOptions, show } from './show.js'
export { type FrameLike, type Row, type TableOptions, table, tableHtml } from './table.js'
