#!/usr/bin/env node
// Where the command starts.

import { keepHeapSmall, letHeapGrow } from './heap.js'

keepHeapSmall()
const { run } = await import('./command.js')
letHeapGrow()
await run(process.argv)
