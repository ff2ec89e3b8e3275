// Bundles what runs in the customer's page, core and its libraries with it, into one script.

import { createRequire } from 'node:module'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

const page = join(import.meta.dirname, '../packages/page')
const from = createRequire(join(page, 'package.json'))
const { build } = await import(pathToFileURL(from.resolve('rolldown')).href)

await build({
  input: join(page, 'dist/browser/main.js'),
  platform: 'browser',
  logLevel: 'warn',
  output: { file: join(page, 'dist/bundle.js'), format: 'iife', minify: true },
})
