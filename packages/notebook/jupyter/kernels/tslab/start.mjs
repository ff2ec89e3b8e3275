// Starts the TypeScript kernel of this workspace. Jupyter names a file with its addresses.

import main from 'tslab/dist/main.js'
import { unwatched } from '../../../dist/unwatched.js'

unwatched()
main.startKernel({ configPath: process.argv[2], enableFindLocal: false })
