// The set-up cell: the chart library goes into the notebook itself, once, so that charts draw
// with no network and after the notebook is reopened.

import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { gzipSync } from 'node:zlib'
import { display } from 'tslab'

const LIBRARY = 'plotly.js-cartesian-dist-min'

/**
 * Call it in the first cell of a notebook that has charts.
 *
 * Charts wait in a queue until the library is unpacked, so the order of cells does not matter.
 */
export function setUp(): void {
  const path = createRequire(import.meta.url).resolve(LIBRARY)
  const packed = gzipSync(readFileSync(path), { level: 9 }).toString('base64')
  display.html(`<script>(${unpack.toString()})('${packed}')</script>`)
}

// Runs in the browser. It may use nothing from this file.
async function unpack(packed: string): Promise<void> {
  // biome-ignore lint/suspicious/noExplicitAny: a browser's globals are not known to Node's types
  const page = globalThis as any
  if (page.tideoverDraw) return

  const draw = ({ id, figure }: { id: string; figure: { data: unknown; layout: object } }) => {
    const waiting = page.document.querySelectorAll(`[data-tideover-figure="${id}"]`)
    for (const place of waiting) {
      if (place.dataset.drawn) continue
      place.dataset.drawn = 'yes'
      place.textContent = ''
      // A house is nobody else's business: no button sends it away.
      const modeBarButtonsToRemove = ['sendChartToCloud']
      const config = { responsive: true, displaylogo: false, modeBarButtonsToRemove }
      page.Plotly.newPlot(place, figure.data, { ...figure.layout }, config)
    }
  }
  page.tideoverDraw = draw

  const bytes = Uint8Array.from(page.atob(packed), (sign: string) => sign.charCodeAt(0))
  const stream = new page.Blob([bytes]).stream()
  const unpacked = stream.pipeThrough(new page.DecompressionStream('gzip'))
  const source = await new page.Response(unpacked).text()
  // The names are shadowed, else a page with a module loader would swallow the library.
  new Function('module', 'exports', 'define', source)()

  for (const one of page.tideoverFigures ?? []) draw(one)
  page.tideoverFigures = { push: draw }
}
