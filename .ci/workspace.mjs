// Installing and building, each done only when something has changed.
//
// Stamps live in node_modules and go with it. All chatter goes to standard error, for scripts
// read standard output.

import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)))
export const CACHE = join(ROOT, 'node_modules', '.cache', 'tideover')

/** What runs in the customer's page, and what bundles it. */
const BUNDLE = 'packages/page/dist/bundle.js'
const BUNDLER = '.ci/bundle-page.mjs'

const TAIL_LINES = 25

/** The work cannot go on; the message is all a person needs. */
export class SetupError extends Error {}

/**
 * Installs what the lock file names.
 *
 * @param scope `cli` for what the command needs, `all` for development. What was once installed
 *   in full stays so.
 */
function install(scope) {
  const hash = hashOf(installInputs())
  const stamp = readStamp('install')
  if (stamp?.hash === hash && (stamp.scope === scope || stamp.scope === 'all')) return

  const wanted = stamp?.scope === 'all' ? 'all' : scope
  say(wanted === 'cli' ? 'Installing what the command needs …' : 'Installing …')
  const pnpm = readJson(join(ROOT, 'package.json')).packageManager
  const filter = wanted === 'cli' ? ['--filter', '@tideover/cli...'] : []
  run('Installing', 'npx', ['--yes', pnpm, 'install', '--frozen-lockfile', ...filter])
  writeStamp('install', { hash, scope: wanted })
}

/**
 * Compiles packages and what they refer to.
 *
 * @param name A folder of packages/, or `all`.
 */
function build(name) {
  const projects = closure(name === 'all' ? allPackages() : [name])
  const sources = projects.flatMap((project) => filesIn(join(project, 'src')))
  const stamp = readStamp(`build-${name}`)
  const inputs = [lockFile(), BUNDLER, ...configs(projects)]
  const hash = hashOf(inputs, sources.map(fingerprint))
  const bundles = projects.includes('packages/page')
  const isBundled = !bundles || existsSync(join(ROOT, BUNDLE))
  if (stamp?.hash === hash && isBundled && sources.every(isBuilt)) return

  for (const gone of stamp?.sources ?? []) {
    if (!sources.includes(gone)) removeOutputs(gone)
  }
  for (const project of projects) {
    const built = filesIn(join(project, 'src')).every(isBuilt)
    if (!built) rmSync(join(ROOT, project, 'dist', '.tsbuildinfo'), { force: true })
  }
  say('Building …')
  const compiler = join(ROOT, 'packages/cli/node_modules/typescript/bin/tsc')
  const target = name === 'all' ? 'tsconfig.json' : `packages/${name}`
  run('Building', process.execPath, [compiler, '-b', target])
  if (bundles) run('Bundling', process.execPath, [join(ROOT, BUNDLER)])
  writeStamp(`build-${name}`, { hash, sources })
}

/**
 * Installs `scope` and, where asked, builds `target`. Ends the process where that fails.
 */
export function prepare({ scope, target }) {
  orEnd(() => {
    install(scope)
    if (target) build(target)
  })
}

/** Does the work; where it cannot go on, says why and ends the process. */
export function orEnd(work) {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof SetupError)) throw error
    console.error(error.message)
    process.exit(1)
  }
}

/** Runs a program to its end with its output kept; throws with the tail of it on failure. */
export function run(what, program, args) {
  const windows = process.platform === 'win32'
  const { status, error, stdout, stderr } = spawnSync(program, args, {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    stdio: ['ignore', 'pipe', 'pipe'],
    shell: windows && program === 'npx',
    env: { ...process.env, CI: 'true', FORCE_COLOR: '0', npm_config_loglevel: 'error' },
  })
  if (status === 0) return
  const log = `${stdout ?? ''}${stderr ?? ''}${error ? `${error.message}\n` : ''}`.trimEnd()
  const tail = log.split('\n').slice(-TAIL_LINES).join('\n')
  throw new SetupError(`${tail}\n${what} failed: ${program} ${args.join(' ')}`)
}

export function say(text) {
  process.stderr.write(`${text}\n`)
}

function lockFile() {
  return 'pnpm-lock.yaml'
}

function allPackages() {
  return readdirSync(join(ROOT, 'packages')).filter((name) =>
    existsSync(join(ROOT, 'packages', name, 'tsconfig.json')),
  )
}

/** What decides what is installed: manifests, lock, patches and the machine. */
function installInputs() {
  const manifests = [...allPackages().map((name) => `packages/${name}`), 'notebooks', 'tests', '.']
    .map((folder) => join(folder, 'package.json'))
    .filter((path) => existsSync(join(ROOT, path)))
  return [lockFile(), 'pnpm-workspace.yaml', ...manifests, ...filesIn('patches')]
}

/** Folders of packages with all they refer to, as their tsconfig files say. */
function closure(names, found = new Set()) {
  for (const name of names) {
    const folder = `packages/${name}`
    if (found.has(folder)) continue
    found.add(folder)
    const { references = [] } = readJson(join(ROOT, folder, 'tsconfig.json'))
    closure(
      references.map(({ path }) => path.replace('../', '')),
      found,
    )
  }
  return [...found].sort()
}

function configs(projects) {
  return ['tsconfig.base.json', ...projects.map((project) => `${project}/tsconfig.json`)]
}

function filesIn(folder) {
  const path = join(ROOT, folder)
  if (!existsSync(path)) return []
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(ROOT, join(entry.parentPath ?? entry.path, entry.name)))
    .sort()
}

function outputsOf(source) {
  const stem = join(ROOT, source.replace(/^(packages.[^/\\]+.)src/, '$1dist').replace(/\.ts$/, ''))
  return ['.js', '.js.map', '.d.ts', '.d.ts.map'].map((ending) => stem + ending)
}

function isBuilt(source) {
  return !source.endsWith('.ts') || existsSync(outputsOf(source)[0])
}

function removeOutputs(source) {
  for (const path of outputsOf(source)) rmSync(path, { force: true })
}

function fingerprint(path) {
  const { size, mtimeMs } = statSync(join(ROOT, path))
  return `${path} ${size} ${mtimeMs}`
}

function hashOf(paths, more = []) {
  const hash = createHash('sha256')
  hash.update(`${process.platform} ${process.arch} ${process.versions.modules}\n`)
  for (const path of paths) hash.update(`${path}\n`).update(readFileSync(join(ROOT, path)))
  for (const line of more) hash.update(`${line}\n`)
  return hash.digest('hex')
}

function readStamp(name) {
  const path = join(CACHE, `${name}.json`)
  return existsSync(path) ? readJson(path) : null
}

function writeStamp(name, stamp) {
  mkdirSync(CACHE, { recursive: true })
  writeFileSync(join(CACHE, `${name}.json`), JSON.stringify(stamp))
}

function readJson(path) {
  return JSON.parse(readFileSync(path, 'utf8'))
}
