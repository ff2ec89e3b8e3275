// What a plain table says about itself above its header: place and offset from UTC.
//
// Understood are `# latitude: 52.1`, `latitude, 52.1`, and a row of names over a row of values.

/** Facts of a record; NaN and false where not said. */
export interface Facts {
  readonly latitudeDeg: number
  readonly longitudeDeg: number
  readonly elevationM: number
  /** Standard time minus UTC. [min] */
  readonly utcOffsetMinutes: number
  readonly typicalYear: boolean
}

/** Reads the rows above a header. */
export function factsAbove(above: readonly (readonly string[])[]): Facts {
  const said = new Map<string, string>()
  above.forEach((row, i) => {
    const next = above[i + 1]
    if (row.length > 2 && next?.length === row.length) {
      row.forEach((name, column) => {
        say(said, name, next[column] ?? '')
      })
    }
    const [name, value] = pairIn(row)
    say(said, name, value)
  })
  const number = (...names: readonly string[]): number => {
    const value = names.map((name) => said.get(name)).find((each) => each !== undefined)
    return value === undefined ? Number.NaN : Number.parseFloat(value)
  }
  const offsets = [
    number('utc_offset_minutes'),
    number('utc_offset_hours', 'utc_offset', 'local_time_zone', 'time_zone', 'timezone') * 60,
    number('utc_offset_seconds') / 60,
  ]
  return {
    latitudeDeg: number('latitude', 'latitude_deg', 'lat', 'latitude_decimal_degrees'),
    longitudeDeg: number('longitude', 'longitude_deg', 'lon', 'longitude_decimal_degrees'),
    elevationM: number('elevation', 'elevation_m', 'altitude', 'altitude_m'),
    utcOffsetMinutes: offsets.find((offset) => !Number.isNaN(offset)) ?? Number.NaN,
    typicalYear: /^(yes|true|1)$/i.test(said.get('typical_year') ?? ''),
  }
}

function say(said: Map<string, string>, name: string, value: string): void {
  const key = name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '_')
    .replaceAll(/^_+|_+$/g, '')
  if (key !== '' && value.trim() !== '' && !said.has(key)) said.set(key, value.trim())
}

function pairIn(row: readonly string[]): readonly [string, string] {
  const filled = row.filter((cell) => cell.trim() !== '')
  if (filled.length === 2 && !/[:=]/.test(filled[0] ?? ''))
    return [filled[0] ?? '', filled[1] ?? '']
  const match = /^([^:=]+)[:=](.*)$/.exec(filled.join(','))
  return [match?.[1] ?? '', match?.[2] ?? '']
}
