// Installs everything a developer needs; builds it too with --build.

import { prepare } from './workspace.mjs'

prepare({ scope: 'all', target: process.argv.includes('--build') && 'all' })
