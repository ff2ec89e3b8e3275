// Runs notebooks and writes them as pages with their results: `[FILE…]`, all of notebooks/ without
// a name, into gallery/.

import { mkdirSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { galleryPage, indexHtml, notebookHtml } from './gallery.js'
import { readNotebook } from './notebook-file.js'
import { runFiles } from './run-files.js'

const FOLDER = 'gallery'

mkdirSync(FOLDER, { recursive: true })
const { ran, failed } = await runFiles(process.argv.slice(2))
const pages = ran.map(({ path, cells }) => {
  const notebook = readNotebook(path)
  const file = `${basename(path, '.ipynb')}.html`
  const outputs = cells.map(({ outputs }) => outputs)
  writeFileSync(join(FOLDER, file), notebookHtml(notebook, outputs))
  return galleryPage(file, notebook)
})
writeFileSync(join(FOLDER, 'index.html'), indexHtml(pages))
console.log(`${join(FOLDER, 'index.html')}: ${pages.length} notebooks with their results`)
process.exitCode = failed > 0 ? 1 : 0
