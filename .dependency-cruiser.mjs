// Imports run one way: between packages, and between the rooms of core.
//
// A room or package may import itself and what stands to its left. The error type of core
// (house/problem.ts) may be imported from every room.

const PACKAGES = {
  core: [],
  files: ['core'],
  figures: ['core'],
  page: ['core', 'files', 'figures'],
  notebook: ['core', 'files', 'figures', 'page'],
  cli: ['core', 'files', 'figures', 'page'],
}

const BASE = ['units', 'axis', 'house']
const SERIES = [...BASE, 'sky', 'load', 'equipment']
const ISLAND = [...SERIES, 'series']
const CUT = [...ISLAND, 'island']

const ROOMS = {
  units: [],
  axis: ['units'],
  house: ['units', 'axis'],
  sky: BASE,
  load: BASE,
  equipment: BASE,
  series: SERIES,
  island: ISLAND,
  cut: [...CUT, 'consequence'],
  consequence: BASE,
  pass: [...CUT, 'cut', 'consequence'],
  answers: [...CUT, 'cut', 'consequence', 'pass'],
}

const CORE_DEPENDENCIES = ['fastest-levenshtein', 'luxon', 'simple-statistics', 'suncalc', 'zod']
const ERROR_TYPE = '^packages/core/src/house/problem\\.ts$'

const packageRules = Object.entries(PACKAGES).map(([name, left]) => ({
  name: `package-${name}`,
  comment: `${name} may import ${left.join(', ') || 'no other package'}, through its entries only`,
  severity: 'error',
  from: { path: `^packages/${name}/` },
  to: {
    path: '^(packages|notebooks|tests|\\.ci)/',
    pathNot: [
      `^packages/${name}/`,
      ...left.map((other) => `^packages/${other}/(src|dist)/(index|rides)\\.(ts|js|d\\.ts)$`),
      ...(name === 'cli' ? ['^\\.ci/'] : []),
    ],
  },
}))

const roomRules = Object.entries(ROOMS).map(([name, left]) => ({
  name: `room-${name}`,
  comment: `${name} may import ${left.join(', ') || 'no other room'} and the error type`,
  severity: 'error',
  from: { path: `^packages/core/src/${name}/` },
  to: {
    path: '^packages/core/src/',
    pathNot: [`^packages/core/src/(${[name, ...left].join('|')})/`, ERROR_TYPE],
  },
}))

export default {
  forbidden: [
    {
      name: 'no-cycles',
      comment: 'two files that import each other are one file',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'found',
      comment: 'what is imported from the registry must stand in package.json',
      severity: 'error',
      from: { path: '^packages/' },
      to: { dependencyTypes: ['unknown', 'npm-no-pkg', 'npm-unknown'] },
    },
    {
      name: 'core-is-pure',
      comment: 'core runs in a browser too: nothing of Node',
      severity: 'error',
      from: { path: '^packages/core/src/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'core-stays-small',
      comment: `core depends on ${CORE_DEPENDENCIES.join(', ')}`,
      severity: 'error',
      from: { path: '^packages/core/src/' },
      to: {
        path: 'node_modules',
        pathNot: `node_modules/(@types/)?(${CORE_DEPENDENCIES.join('|')})/`,
      },
    },
    {
      name: 'room-known',
      comment: 'a room is listed here before it holds anything',
      severity: 'error',
      from: { path: `^packages/core/src/(?!(${Object.keys(ROOMS).join('|')})/)[^/]+/` },
      to: {},
    },
    ...packageRules,
    ...roomRules,
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^packages/[^/]+/dist/|/fixtures/)' },
    tsPreCompilationDeps: true,
    combinedDependencies: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['@tideover/source', 'import', 'types', 'node', 'default'],
    },
  },
}
