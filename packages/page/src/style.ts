// How the page looks: calm, high in contrast, for a phone first and for A4.

import { BAD, GRID, INK, NIGHT, QUIET } from '@tideover/figures'
import { GRID_STYLE } from './sections/grid.js'

export const STYLE = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { margin: 0 auto; padding: 1rem 1rem 3rem; max-width: 44rem; color: ${INK}; background: #fff;
  font: 1.0625rem/1.5 system-ui, "Segoe UI", Helvetica, Arial, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.5rem; line-height: 1.3; margin: .25rem 0 1rem; }
h2 { font-size: 1.25rem; line-height: 1.3; margin: 2.25rem 0 .5rem; padding-top: .75rem; border-top: 2px solid ${INK}; }
h3 { font-size: 1.0625rem; margin: 1.25rem 0 .25rem; }
p, ul, ol, dl, table { margin: .5rem 0; }
ul, ol { padding-left: 1.4rem; }
li { margin: .35rem 0; }
.counted { display: block; font-size: 1.0625rem; font-weight: 400; margin-top: .5rem; }
.first { border-left: 4px solid ${BAD}; padding-left: .75rem; }
a { color: ${INK}; }
.house { margin: 0; font-weight: 600; color: ${QUIET}; }
.note, small { font-size: .9375rem; color: ${QUIET}; font-weight: 400; }
.lasts { font-weight: 600; font-size: 1.125rem; }
dl div { padding: .35rem 0; border-bottom: 1px solid ${GRID}; }
dt { font-weight: 600; }
dd { margin: 0; }
table { width: 100%; border-collapse: collapse; }
th, td { text-align: left; vertical-align: top; padding: .4rem .5rem .4rem 0; border-bottom: 1px solid ${GRID}; }
/* Columns are as wide as their longest word, so that no number breaks in the middle. */
td, thead th { overflow-wrap: break-word; }
thead th { font-size: .9375rem; color: ${QUIET}; font-weight: 600; }
.grid { font-size: .8125rem; font-variant-numeric: tabular-nums; overflow-wrap: normal; }
.grid td, .grid thead th { text-align: center; overflow-wrap: normal; padding: .25rem .2rem; font-size: .8125rem; }
.grid thead th:first-child { text-align: left; }
.even { table-layout: fixed; }
.grid.even thead th { font-size: .75rem; white-space: nowrap; padding: .25rem 0; }
.grid tbody th { padding: .25rem .35rem .25rem 0; }
.grid td, .swatch { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
h4 { font-size: 1rem; margin: 1rem 0 .25rem; }
${GRID_STYLE}
.aside { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.chart { display: block; width: 100%; max-width: 30rem; height: auto; font-size: 12px; margin: .75rem 0 .25rem; }
.swatch { width: 1.5em; height: 1em; vertical-align: -.1em; }
.key, .hours, .fates { list-style: none; padding: 0; }
.key { display: flex; flex-wrap: wrap; gap: .15rem 1rem; font-size: .9375rem; }
.key li { margin: 0; }
.hours > li { margin: 0; padding: .4rem 0; border-bottom: 1px solid ${GRID}; }
.hours p, .hours ul { margin: 0; }
.hours ul { list-style: none; padding: 0 0 0 .75rem; border-left: 3px solid ${GRID}; }
.hours time { font-variant-numeric: tabular-nums; font-weight: 600; }
details { margin: .75rem 0; }
summary { cursor: pointer; font-weight: 600; padding: .5rem 0; }
.engineering { margin-top: 2.5rem; border-top: 2px solid ${INK}; }
form { background: ${NIGHT}; padding: .75rem 1rem 1rem; border-radius: .5rem; }
.fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr)); gap: .6rem 1rem; }
.fields label { display: block; font-weight: 600; }
.fields .whole { grid-column: 1 / -1; }
select { display: block; width: 100%; font: inherit; font-weight: 400; color: inherit; background: #fff; min-height: 2.75rem;
  padding: .25rem .4rem; border: 1px solid ${QUIET}; border-radius: .3rem; }
fieldset { border: 0; margin: .9rem 0; padding: 0; min-width: 0; }
legend { font-weight: 600; padding: 0; }
fieldset label { display: flex; gap: .6rem; align-items: flex-start; padding: .4rem 0; }
input[type=checkbox] { width: 1.35rem; height: 1.35rem; margin: .1rem 0 0; flex: none; accent-color: ${INK}; }
form small { color: ${INK}; }
button { font: inherit; font-weight: 600; color: #fff; background: ${INK}; border: 0; border-radius: .3rem;
  min-height: 2.75rem; padding: .4rem 1.1rem; cursor: pointer; }
:focus-visible { outline: 3px solid ${BAD}; outline-offset: 2px; }
html:not(.playing) #play-form, html:not(.playing) .clear { display: none; }
#play-status:empty { display: none; }
@media (max-width: 34rem) {
  h1 { font-size: 1.3rem; }
  thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  table, tbody, tr, th, td { display: block; }
  tr { padding: .4rem 0; border-bottom: 1px solid ${GRID}; }
  tr th, tr td { border: 0; padding: .05rem 0; }
  table.grid { display: table; } .grid tbody { display: table-row-group; } .grid tr { display: table-row; }
  .grid thead { position: static; width: auto; height: auto; clip-path: none; display: table-header-group; }
  .grid th, .grid td { display: table-cell; border-bottom: 1px solid ${GRID}; padding: .25rem .15rem; }
  .grid td::before { content: none; }
  .grid.even thead th { font-size: .6875rem; }
  td::before { content: attr(data-head) ": "; color: ${QUIET}; }
}
@media print {
  @page { size: A4; margin: 16mm 15mm; }
  body { padding: 0; max-width: none; font-size: 10.5pt; }
  h2, h3, h4, summary, thead, caption, p:has(+ table) { break-after: avoid; }
  li, tr, table, .chart, dl div { break-inside: avoid; }
  /* A closed fold is a heading with nothing below it. */
  details:not([open]) { display: none; }
  #play { display: none; }
  .clear { display: none; }
  summary { list-style: none; }
}
`
