// What a cell of a notebook needs.

export { type Ask, ask } from './ask.js'
export { type Column, frame } from './frame.js'
export { type Progress, progress } from './progress.js'
export { setUp } from './set-up.js'
export { figureHtml, type ShowOptions, show } from './show.js'
export { type FrameLike, type Row, type TableOptions, table, tableHtml } from './table.js'
