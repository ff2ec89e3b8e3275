// Starts the TypeScript kernel of this workspace. Jupyter names a file with its addresses.

import main from 'tslab/dist/main.js'

main.startKernel({ configPath: process.argv[2], enableFindLocal: false })
