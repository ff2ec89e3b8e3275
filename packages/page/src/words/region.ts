// What the same things are called where the house stands, told by its time zone.

export interface Region {
  /** `a power cut`, `load-shedding` */
  readonly aCut: string
  readonly theCut: string
  /** As a heading or in front of another noun. */
  readonly cut: string
  readonly board: string
  readonly operator: string
  readonly electrode: string
  readonly bond: string
  /** A number that reaches the operator from everywhere; empty where none is known. */
  readonly dial: string
  /** Language of the page, for a reader aloud. */
  readonly lang: string
}

const NEUTRAL: Region = {
  aCut: 'a power cut',
  theCut: 'the power cut',
  cut: 'power cut',
  board: 'distribution board',
  operator: 'network operator',
  electrode: 'earth electrode',
  bond: 'neutral-earth bond',
  dial: '',
  lang: 'en',
}

const BRITAIN: Region = {
  ...NEUTRAL,
  board: 'consumer unit',
  dial: '105',
  lang: 'en-GB',
}

const NORTH_AMERICA: Region = {
  ...NEUTRAL,
  aCut: 'an outage',
  theCut: 'the outage',
  cut: 'outage',
  board: 'panel',
  operator: 'utility',
  electrode: 'ground rod',
  bond: 'neutral-ground bond',
  lang: 'en-US',
}

const AUSTRALASIA: Region = {
  ...NEUTRAL,
  aCut: 'a blackout',
  theCut: 'the blackout',
  cut: 'blackout',
  board: 'switchboard',
  operator: 'network',
  lang: 'en-AU',
}

const SHEDDING: Region = {
  ...NEUTRAL,
  aCut: 'load-shedding',
  theCut: 'the load-shedding',
  cut: 'load-shedding',
  lang: 'en',
}

/** Zones of North America by city; whole folders are named with a slash at their end. */
const NORTH_AMERICAN = [
  ...['Adak', 'Anchorage', 'Boise', 'Chicago', 'Denver', 'Detroit', 'Juneau', 'Los_Angeles'],
  ...['Menominee', 'Metlakatla', 'New_York', 'Nome', 'Phoenix', 'Sitka', 'Yakutat'],
  ...['Indiana/', 'Kentucky/', 'North_Dakota/', 'Indianapolis', 'Louisville'],
  ...['Edmonton', 'Halifax', 'Iqaluit', 'Moncton', 'Regina', 'St_Johns', 'Toronto', 'Vancouver'],
  ...['Whitehorse', 'Winnipeg', 'Yellowknife'],
].map((city) => `America/${city}`)

const REGIONS: readonly (readonly [Region, readonly string[]])[] = [
  [BRITAIN, ['Europe/London', 'Europe/Belfast', 'GB']],
  [NORTH_AMERICA, [...NORTH_AMERICAN, 'Pacific/Honolulu', 'US/', 'Canada/']],
  [AUSTRALASIA, ['Australia/', 'Pacific/Auckland', 'Pacific/Chatham', 'NZ']],
  [SHEDDING, ['Africa/Johannesburg', 'Asia/Kolkata', 'Asia/Calcutta']],
]

/** @param zone  IANA name */
export function regionOf(zone: string): Region {
  const fits = (name: string): boolean =>
    name.endsWith('/') ? zone.startsWith(name) : zone === name
  return REGIONS.find(([, names]) => names.some(fits))?.[0] ?? NEUTRAL
}
