// Notebooks with their results as pages of HTML: each one file that needs no network.

import { marked } from 'marked'
import { escapeHtml } from './html.js'
import type { NotebookFile } from './notebook-file.js'
import type { Output } from './run.js'

/** A page of the gallery, as its index names it. */
export interface GalleryPage {
  readonly file: string
  readonly title: string
  /** The first paragraph, as HTML. */
  readonly lead: string
}

const STYLE = `
:root { color-scheme: light }
body { margin: 0 auto; max-width: 60rem; padding: 1rem; font: 1rem/1.5 system-ui, sans-serif;
  color: #1b1b1b; background: #fff; overflow-wrap: break-word }
h1, h2, h3 { line-height: 1.2 }
h2 { margin-top: 2.2rem }
a { color: #0b5394 }
details.code { margin: .5rem 0; color: #555 }
details.code summary { cursor: pointer; font-size: .85rem }
pre { overflow-x: auto; padding: .6rem; background: #f4f4f2; font-size: .85rem }
pre.said { white-space: pre-wrap; background: none; padding: 0; font: inherit }
.wide { overflow-x: auto; margin: .8rem 0 }
table { border-collapse: collapse; font-size: .9rem; font-variant-numeric: tabular-nums }
caption { text-align: left; font-weight: 600; padding: .3rem 0 }
th, td { padding: .2rem .7rem .2rem 0; border-bottom: 1px solid #ddd; text-align: left;
  vertical-align: top; overflow-wrap: normal }
li { margin: .3rem 0 }
@media (max-width: 30rem) {
  .wide:has([data-tideover-figure]) { margin-left: -.9rem; margin-right: -.9rem } }
@media print { details.code { display: none } body { max-width: none; padding: 0 } }
`

/**
 * A notebook as a page: its prose, the results of each code cell, and the code folded away.
 *
 * @param outputs  one list a code cell
 */
export function notebookHtml(
  notebook: NotebookFile,
  outputs: readonly (readonly Output[])[],
): string {
  let code = 0
  const body = notebook.cells.map(({ cell_type, source }) => {
    const text = [source].flat().join('')
    if (cell_type !== 'code') return rendered(text)
    return codeHtml(text, outputs[code++] ?? [])
  })
  return pageOf(titleOf(notebook), ['<p><a href="index.html">All notebooks</a></p>', ...body])
}

/** What the index says of a notebook: its first heading and its first paragraph. */
export function galleryPage(file: string, notebook: NotebookFile): GalleryPage {
  const [, lead = ''] = proseOf(notebook).split(/\n\s*\n/)
  return { file, title: titleOf(notebook), lead: rendered(lead) }
}

export function indexHtml(pages: readonly GalleryPage[]): string {
  return pageOf('tideover: notebooks with their results', [
    '<h1>Notebooks with their results</h1>',
    '<p>Questions about a house and its power cuts, asked and answered step by step. The houses are invented.</p>',
    ...pages.map(
      ({ file, title, lead }) => `<h2><a href="${file}">${escapeHtml(title)}</a></h2>${lead}`,
    ),
  ])
}

function proseOf({ cells }: NotebookFile): string {
  const first = cells.find(({ cell_type }) => cell_type === 'markdown')
  return [first?.source ?? ''].flat().join('')
}

function titleOf(notebook: NotebookFile): string {
  return /^#\s+(.+)$/m.exec(proseOf(notebook))?.[1] ?? 'Notebook'
}

function rendered(markdown: string): string {
  return marked.parse(markdown, { async: false })
}

function codeHtml(source: string, outputs: readonly Output[]): string {
  const code = `<details class="code"><summary>How this is worked out</summary><pre>${escapeHtml(source)}</pre></details>`
  return code + outputs.map(outputHtml).join('')
}

function outputHtml(output: Output): string {
  if (output.kind === 'text') return `<pre class="said">${escapeHtml(output.text)}</pre>`
  const html = output.data['text/html']
  if (html !== undefined) return `<div class="wide">${html}</div>`
  return `<pre class="said">${escapeHtml(output.data['text/plain'] ?? '')}</pre>`
}

function pageOf(title: string, body: readonly string[]): string {
  return [
    '<!doctype html><html lang="en-GB"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeHtml(title)}</title><style>${STYLE}</style></head><body><main>`,
    ...body,
    '</main></body></html>',
  ].join('\n')
}
