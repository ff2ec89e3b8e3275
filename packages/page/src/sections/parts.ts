// Pieces that several sections are made of.

import { type Html, html } from '../html/html.js'

/** A table that turns into labelled lines on a phone; the first cell names its row. */
export function table(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  caption: string,
): Html {
  return html`<table><caption class="aside">${caption}</caption><thead><tr>${head.map(
    (name) => html`<th scope="col">${name}</th>`,
  )}</tr></thead><tbody>${rows.map(
    ([first, ...cells]) =>
      html`<tr><th scope="row">${first}</th>${cells.map(
        (cell, i) => html`<td data-head="${head[i + 1]}">${cell}</td>`,
      )}</tr>`,
  )}</tbody></table>`
}

export function bullets(texts: readonly string[]): Html {
  return html`<ul>${texts.map((text) => html`<li>${text}</li>`)}</ul>`
}

export function section(id: string, title: string, body: Html): Html {
  return html`<section id="${id}" aria-labelledby="${id}-title"><h2 id="${id}-title">${title}</h2>
${body}
</section>
`
}
