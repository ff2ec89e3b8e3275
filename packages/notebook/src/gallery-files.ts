// Runs notebooks and writes them as pages with their results: `[FILE…]`, all of notebooks/ without
// a name, into gallery/.

import { mkdirSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { galleryPage, indexHtml, notebookHtml } from './gallery.js'
import { readNotebook } from './notebook-file.js'
import { runFiles } from './run-files.js'

const FOLDER = 'gallery'

mkdirSync(FOLDER, { recursive: true })
const named = process.argv.slice(2)
const { ran, failed } = await runFiles(named)
const pages = ran.map(({ path, cells }) => {
  const notebook = readNotebook(path)
  const file = `${basename(path, '.ipynb')}.html`
  const outputs = cells.map(({ outputs }) => outputs)
  writeFileSync(join(FOLDER, file), notebookHtml(notebook, outputs))
  return galleryPage(file, notebook)
})
// Of some notebooks alone, the index of all would tell too little.
if (named.length === 0) writeFileSync(join(FOLDER, 'index.html'), indexHtml(pages))
const said = named.length === 0 ? ['index.html'] : pages.map(({ file }) => file)
for (const file of said) console.log(join(FOLDER, file))
process.exitCode = failed > 0 ? 1 : 0
