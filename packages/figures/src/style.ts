// One look for all figures.
//
// Neighbouring areas differ in lightness, so that they stay apart in grey print and for people
// who see few colours; what is bad is hatched besides.

export const INK = '#1d2733'
export const QUIET = '#5b6673'
export const GRID = '#d9dee5'
export const NIGHT = '#eceff4'
export const BAD = '#8c1c13'
export const SHONE = '#7d5a00'

export const AREAS = {
  sun: '#f3c24b',
  generator: '#c4632d',
  battery: '#1f4f82',
  grid: '#9aa5b0',
  critical: '#22343f',
  comfort: '#6f9788',
  intoBattery: '#a2c3e8',
  losses: '#e4e1da',
  conversion: '#a39d90',
} as const

/** Parts of a whole, the least first and darkest: what fails is what is seen. */
export const PARTS = ['#14365c', '#47719c', '#84a5c5', '#bdd0e3', '#f4f8fb'] as const

/** Lines of a figure that compares, the one that counts first. */
export const LINES = [
  { color: '#14365c', width: 4, dash: 'solid' },
  { color: '#c4632d', width: 2.5, dash: 'solid' },
  { color: '#4f7d6c', width: 2.5, dash: '8px,3px' },
  { color: '#7a8794', width: 2.5, dash: '2px,3px' },
] as const

/** How one line of several looks. */
export interface LineLook {
  readonly color: string
  readonly width: number
  readonly dash: string
}

/** Strokes of lines in an order; words in the lightest are still read on white. */
const ORDER = {
  colors: ['#14365c', '#2a527f', '#3f6a97', '#527ba6', '#5e84ab'],
  dashes: ['solid', '12px,3px', '6px,3px', '2px,2px', '9px,2px,2px,2px'],
}

/**
 * Looks of so many lines: compared with the first where they are few, else, and where they are
 * steps of one thing, in an order from dark to light.
 */
export function lineLooks(count: number, inOrder: boolean): LineLook[] {
  if (!inOrder && count <= LINES.length) return LINES.slice(0, count)
  const { colors, dashes } = ORDER
  return Array.from({ length: count }, (_, i) => ({
    color: colors[Math.round((i * (colors.length - 1)) / Math.max(1, count - 1))]!,
    width: 2.5,
    dash: dashes[i % dashes.length]!,
  }))
}

const FONT = { family: 'system-ui, "Segoe UI", Helvetica, Arial, sans-serif', size: 13, color: INK }

/** Buttons that do nothing on axes that stay put, and the one that would send the house away. */
const IDLE_BUTTONS = [
  'sendChartToCloud',
  'select2d',
  'lasso2d',
  'zoom2d',
  'pan2d',
  'zoomIn2d',
  'zoomOut2d',
  'autoScale2d',
  'resetScale2d',
]

/** What every layout begins with. */
export const BASE_LAYOUT = {
  font: FONT,
  paper_bgcolor: '#ffffff',
  plot_bgcolor: 'rgba(0,0,0,0)',
  showlegend: false,
  autosize: true,
  dragmode: false,
  modebar: { remove: IDLE_BUTTONS },
  hoverlabel: { font: { ...FONT, size: 12 } },
} as const

/** What every axis begins with. */
export const BASE_AXIS = {
  gridcolor: GRID,
  zeroline: false,
  linecolor: QUIET,
  tickfont: { size: 12, color: QUIET },
  fixedrange: true,
  automargin: false,
} as const

/** Name and unit of an axis, smaller than plotly would write them. */
export function axisTitle(text: string): Record<string, unknown> {
  return { text, standoff: 8, font: { size: 12.5, color: QUIET } }
}

/** A dashed line through all columns, seen on dark ones too. @param yref  plotly's name of the axis */
export function levelLine(
  level: number,
  yref: string,
  { color, dash }: { readonly color: string; readonly dash: string } = { color: BAD, dash: 'dash' },
): Record<string, unknown>[] {
  const at = { type: 'line', xref: 'paper', x0: 0, x1: 1, yref, y0: level, y1: level }
  return [
    { ...at, line: { color: '#ffffff', width: 3.5 } },
    { ...at, line: { color, width: 1.5, dash } },
  ]
}
