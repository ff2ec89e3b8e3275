// JupyterLab on the notebooks: `npm run lab -- ARGUMENT…`, arguments as jupyter lab takes them.
//
// It lives in .venv, its kernel is that of packages/notebook, and all that it keeps (settings,
// what runs) goes into .jupyter: nothing outside of this folder is written. With --install it is
// only installed.

import { spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { delimiter, dirname, join } from 'node:path'
import { orEnd, prepare, ROOT, run, SetupError, say } from './workspace.mjs'

const LAB = 'jupyterlab>=4.4,<5'
/** What JupyterLab 4.4 needs. */
const LEAST_PYTHON = [3, 9]

const WINDOWS = process.platform === 'win32'
const VENV = join(ROOT, '.venv')
const PYTHON = join(VENV, WINDOWS ? 'Scripts/python.exe' : 'bin/python')
const STAMP = join(VENV, 'tideover.txt')
const JUPYTER = join(ROOT, 'packages/notebook/jupyter')
const KEPT = join(ROOT, '.jupyter')

/** No question which of one kernel to start, none about news, and no look-up of newer versions. */
const SETTINGS = {
  '@jupyterlab/notebook-extension:tracker': { autoStartDefaultKernel: true },
  '@jupyterlab/apputils-extension:notification': { fetchNews: 'false', checkForUpdates: false },
}

const args = process.argv.slice(2)
orEnd(installLab)
if (!args.includes('--install')) {
  prepare({ scope: 'all', target: 'all' })
  start()
}

function installLab() {
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === LAB) return
  if (!existsSync(PYTHON)) run('Making .venv', findPython(), ['-m', 'venv', VENV])
  say('Installing JupyterLab into .venv …')
  run('Installing JupyterLab from PyPI', PYTHON, ['-m', 'pip', 'install', '--quiet', LAB])
  // Its own scripts are none of this workspace's modules.
  writeFileSync(join(VENV, 'package.json'), '{}')
  const settings = join(VENV, 'share/jupyter/lab/settings')
  mkdirSync(settings, { recursive: true })
  writeFileSync(join(settings, 'overrides.json'), JSON.stringify(SETTINGS))
  writeFileSync(STAMP, LAB)
}

/** A Python that can make an environment of its own. */
function findPython() {
  const least = LEAST_PYTHON.join('.')
  for (const program of WINDOWS ? ['py', 'python'] : ['python3', 'python']) {
    const version = ask(program, 'import sys; print(*sys.version_info[:2])')
    if (version === null) continue
    const [major, minor] = version.split(' ').map(Number)
    const isOld = major < LEAST_PYTHON[0] || (major === LEAST_PYTHON[0] && minor < LEAST_PYTHON[1])
    if (isOld) continue
    if (ask(program, 'import venv, ensurepip') !== null) return program
    throw new SetupError(
      `JupyterLab needs Python's venv, and the ${program} of this machine (${major}.${minor}) comes without it. On Debian and Ubuntu: apt install python3-venv`,
    )
  }
  throw new SetupError(
    `JupyterLab needs Python ${least} or newer with its venv module, and none was found. Notebooks also run without it: npm run gallery`,
  )
}

function ask(program, code) {
  const { status, stdout } = spawnSync(program, ['-c', code], { encoding: 'utf8' })
  return status === 0 ? stdout.trim() : null
}

function start() {
  // Whoever works as root anyway, in a container say, is not sent away.
  const asRoot = process.getuid?.() === 0 && !args.includes('--allow-root')
  say('JupyterLab opens the notebooks in a browser, or at the address below. Ctrl-C ends it.')
  const env = {
    ...process.env,
    PATH: [dirname(process.execPath), process.env.PATH].join(delimiter),
    JUPYTER_PATH: JUPYTER,
    JUPYTER_CONFIG_PATH: JUPYTER,
    JUPYTER_CONFIG_DIR: join(KEPT, 'config'),
    JUPYTER_DATA_DIR: join(KEPT, 'data'),
    JUPYTER_RUNTIME_DIR: join(KEPT, 'runtime'),
    IPYTHONDIR: join(KEPT, 'ipython'),
  }
  const lab = spawn(PYTHON, ['-m', 'jupyterlab', ...(asRoot ? ['--allow-root'] : []), ...args], {
    cwd: ROOT,
    stdio: 'inherit',
    env,
  })
  // Ctrl-C reaches both; JupyterLab asks back, and its end is ours.
  process.on('SIGINT', () => {})
  process.on('SIGTERM', () => lab.kill())
  lab.on('exit', (status) => {
    process.exitCode = status ?? 0
  })
}
