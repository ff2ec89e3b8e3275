// The one door through which anything comes onto the page.
//
// A template tagged `html` escapes whatever is put into it, but for what another such template
// made. Names in a house file may hold anything.

import { escapeHtml } from '../escape.js'

/** Markup that this door made. */
export class Html {
  constructor(readonly markup: string) {}
}

type Part = Html | string | number | null | undefined | false | readonly Part[]

/** @example html`<b>${'<script>'}</b>`.markup // => '<b>&lt;script&gt;</b>' */
export function html(texts: TemplateStringsArray, ...parts: readonly Part[]): Html {
  let markup = texts[0] as string
  for (const [i, part] of parts.entries()) markup += shown(part) + (texts[i + 1] as string)
  return new Html(markup)
}

/** Markup of our own files, such as the style and the bundled script; nothing that a user wrote. */
export function ownMarkup(markup: string): Html {
  return new Html(markup)
}

function shown(part: Part): string {
  if (part === null || part === undefined || part === false) return ''
  if (part instanceof Html) return part.markup
  if (Array.isArray(part)) return part.map(shown).join('')
  return escapeHtml(String(part))
}

/** JSON that a script element may hold: nothing in it ends the element or opens a comment. */
export function jsonMarkup(value: unknown): Html {
  return new Html(
    JSON.stringify(value).replace(/[<\u2028\u2029]/g, (mark) => {
      return `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`
    }),
  )
}
