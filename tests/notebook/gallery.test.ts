// A notebook with its results as a page.

import { galleryPage, indexHtml, notebookHtml } from '@tideover/notebook/gallery'
import type { Output } from '@tideover/notebook/run'
import { expect, it } from 'vitest'

const NOTEBOOK = {
  cells: [
    { cell_type: 'markdown', source: ['# Is 3 < 4?\n', '\n', 'It **is**.\n', '\n', 'More.'] },
    { cell_type: 'code', source: 'const a = 3 < 4' },
    { cell_type: 'code', source: ['console.log(a)\n', 'table([])'] },
  ],
}
const OUTPUTS: Output[][] = [
  [],
  [
    { kind: 'text', stream: 'stdout', text: '<true> & fine\n' },
    { kind: 'display', data: { 'text/html': '<table><caption>Shares</caption></table>' } },
  ],
]

it('has prose, results in order and the code folded away, and asks nothing of a network', () => {
  const page = notebookHtml(NOTEBOOK, OUTPUTS)
  expect(page).toContain('<title>Is 3 &lt; 4?</title>')
  expect(page).toContain('<p>It <strong>is</strong>.</p>')
  const parts = [
    '<pre>const a = 3 &lt; 4</pre></details>',
    '<pre>console.log(a)\ntable([])</pre></details>',
    '<pre class="said">&lt;true&gt; &amp; fine\n</pre>',
    '<div class="wide"><table><caption>Shares</caption></table></div>',
  ]
  const places = parts.map((part) => page.indexOf(part))
  expect(places).toEqual([...places].sort((a, b) => a - b))
  expect(places).not.toContain(-1)
  expect(page).not.toMatch(/(src|href)="?(https?:|\/)/)
})

it('is listed by its heading and first paragraph', () => {
  const index = indexHtml([galleryPage('01.html', NOTEBOOK)])
  expect(index).toContain('<a href="01.html">Is 3 &lt; 4?</a></h2><p>It <strong>is</strong>.</p>')
  expect(index).not.toContain('More.')
})
