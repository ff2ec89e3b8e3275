// The script of the page, bundled when the package is built.

import { readFileSync } from 'node:fs'

/** @throws  where the package was not built */
export function pageScript(): string {
  const bundle = readFileSync(new URL('../dist/bundle.js', import.meta.url), 'utf8')
  // Within a script element nothing may look like its end or like a comment.
  return bundle.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--')
}
