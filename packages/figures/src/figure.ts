// A figure as plotly draws it, as plain data: nothing here draws.

/** One set of marks. What else a type takes is plotly's to say. */
export interface Trace {
  readonly type: string
  readonly name?: string
  readonly [attribute: string]: unknown
}

export interface Layout {
  readonly title?: { readonly text: string; readonly [attribute: string]: unknown }
  readonly [attribute: string]: unknown
}

export interface Figure {
  readonly data: readonly Trace[]
  readonly layout: Layout
}

/**
 * The figure as JSON that may stand inside a script element.
 *
 * Columns (`Float64Array`) become lists; NaN becomes null, which plotly draws as a gap.
 */
export function figureJson(figure: Figure): string {
  return JSON.stringify(figure, listed).replaceAll('<', '\\u003c')
}

function listed(_key: string, value: unknown): unknown {
  if (!ArrayBuffer.isView(value) || value instanceof DataView) return value
  return Array.from(value as unknown as ArrayLike<number>)
}
