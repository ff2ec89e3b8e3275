// A command that asks again what was asked.

import { camel, DEFAULT_WORDS, type Words } from '../options.js'

/** Options that a ride and a trace share. */
const SHARED = ['sky', 'modules', 'start-soc', 'health', 'winters', 'seed', 'years']

/** Another command on the same house with the same options, those left out left out. */
export function repeated(command: string, path: string | undefined, words: Words): string {
  const given = SHARED.flatMap((name) => {
    const word = words[camel(name)]
    const isDefault = Object.entries(DEFAULT_WORDS).some(([n, w]) => n === name && w === word)
    return word === undefined || isDefault ? [] : [`--${name} ${String(word).replaceAll(' ', '')}`]
  })
  const program = process.env.npm_lifecycle_event === 'start' ? 'npm start --' : 'tideover'
  return [program, command, ...(path === undefined ? [] : [path]), ...given].join(' ')
}
