#!/usr/bin/env node
// Runs the command from a clone: installs and builds what it needs when that has changed, then
// hands over. Says on standard error what it does.

const [major, minor] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`tideover needs Node 20.19 or newer, this is ${process.version}`)
  process.exit(1)
}

import('../../.ci/run-command.mjs').then(({ runCommand }) => runCommand())
