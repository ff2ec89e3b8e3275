// Plain tables of irradiance and daily station files.

import { weatherFromText } from '@tideover/files'
import { expect, it } from 'vitest'
import { refusal } from './problems.js'

const read = (text: string) => weatherFromText(text, 'w.csv')
const refused = (text: string) => refusal(() => read(text))

/** Ten-minute rows from midnight of 1 June 2024. */
function rows(
  n: number,
  cells: (i: number) => string,
  stamp = (clock: string) => `2024-06-01T${clock}`,
): string {
  return Array.from({ length: n }, (_, i) => {
    const clock = `${String(Math.floor(i / 6)).padStart(2, '0')}:${i % 6}0`
    return `${stamp(clock)},${cells(i)}\n`
  }).join('')
}
const withOffset = (clock: string) => `2024-06-01T${clock}:00-07:00`

it('reads named columns and stamps with an offset, as starts of intervals', () => {
  const text = `time,ghi_w_m2,dni_w_m2,dhi_w_m2,air_c,wind_m_s\n${rows(12, (i) => `${i},20,30,15,2`, withOffset)}`
  const record = read(text)
  expect(record.name).toBe('w.csv')
  expect(record.startMs).toBe(Date.UTC(2024, 5, 1))
  expect(record.utcOffsetMinutes).toBe(-420)
  expect(record.stepMinutes).toBe(10)
  expect([
    record.ghi[11],
    record.dni?.[0],
    record.dhi?.[0],
    record.airC?.[0],
    record.windMs?.[0],
  ]).toEqual([11, 20, 30, 15, 2])
  expect(record.typicalYear).toBe(false)
  expect(record.notes).toContain('A stamp marks the start of its interval.')
  expect(record.notes).toContain('Covers 2 h, less than a year.')
})

it('takes time_end as the end of an interval', () => {
  const record = read(`time_end,ghi_w_m2\n${rows(12, String, withOffset)}`)
  expect(record.startMs).toBe(Date.UTC(2024, 4, 31, 23, 50))
})

it('reads offset and place from lines above the header', () => {
  const facts = '# utc_offset_hours: 5.5\n# latitude: 18.5\n# longitude: 73.9\n# elevation: 560 m\n'
  const record = read(`${facts}time,ghi_w_m2\n${rows(6, String)}`)
  expect(record.utcOffsetMinutes).toBe(330)
  expect(record.site).toEqual({ latitudeDeg: 18.5, longitudeDeg: 73.9, elevationM: 560 })
})

it('reads a row of names over a row of values above the header, and other names and units', () => {
  const facts = 'latitude,longitude,elevation,utc_offset_seconds\n52.5,13.4,38,3600\n\n'
  const header =
    'time,shortwave_radiation (W/m²),direct_normal_irradiance (W/m²),diffuse_radiation (W/m²),temperature_2m (°F),wind_speed_10m (km/h)\n'
  const record = read(facts + header + rows(6, () => '1,2,3,50,36'))
  expect(record.utcOffsetMinutes).toBe(60)
  expect([record.ghi[0], record.dni?.[0], record.dhi?.[0]]).toEqual([1, 2, 3])
  expect(record.airC?.[0]).toBeCloseTo(10, 12)
  expect(record.windMs?.[0]).toBeCloseTo(10, 12)
})

it('reads kW/m² and Wh/m² an interval as W/m²', () => {
  expect(read(`time,ghi [kW/m2]\n${rows(6, () => '0.5', withOffset)}`).ghi[0]).toBe(500)
  expect(read(`time,ghi_wh_m2\n${rows(6, () => '10', withOffset)}`).ghi[0]).toBe(60)
})

it('asks for the offset from UTC where there is none', () => {
  expect(refused(`time,ghi_w_m2\n${rows(6, String)}`)).toBe(
    'w.csv:2 must be stamps with an offset from UTC (2024-01-01T00:00-07:00), or a line above the header (# utc_offset_hours: -7), got stamps without an offset',
  )
})

it('asks for the unit where the header has none and the values are too small', () => {
  expect(refused(`time,ghi\n${rows(6, () => '0.8', withOffset)}`)).toContain(
    'w.csv:1 must be irradiance with its unit in the header',
  )
})

it('refuses joules, text among numbers, and a table without global irradiance', () => {
  expect(refused(`time,ghi [MJ/m2]\n${rows(6, String, withOffset)}`)).toContain(
    'irradiance in W/m²',
  )
  expect(refused(`time,ghi_w_m2\n${rows(6, (i) => (i === 2 ? 'x' : '1'), withOffset)}`)).toBe(
    'w.csv:4 must be a number in "ghi_w_m2", or nothing, got "x"',
  )
  expect(refused('date,pressure,temperature,wind\n2010-01-01T01:00:00,1016.6,4,3.8\n')).toContain(
    'a table whose header names global irradiance (ghi_w_m2)',
  )
})

it('puts stamps that follow summer time on standard time', () => {
  const text =
    'time,ghi_w_m2\n2024-10-27T01:00+02:00,1\n2024-10-27T02:00+02:00,2\n2024-10-27T02:00+01:00,3\n2024-10-27T03:00+01:00,4\n'
  const record = read(text)
  expect([...record.ghi]).toEqual([1, 2, 3, 4])
  expect(record.utcOffsetMinutes).toBe(60)
  expect(record.startMs).toBe(Date.UTC(2024, 9, 27))
})

it('takes irradiance below zero as 0, codes like -7999 as missing, and counts both', () => {
  const text = `time,ghi_w_m2,air_c\n${rows(12, (i) => (i === 5 ? '-7999,-9999.9' : `${i < 3 ? -2.7 : 10},-4`), withOffset)}`
  const record = read(text)
  expect([...record.ghi.subarray(0, 6)]).toEqual([0, 0, 0, 10, 10, 10])
  expect(record.airC?.[5]).toBe(-4)
  expect(record.notes).toContain('GHI: 3 values below zero taken as 0 (lowest -2.7).')
  expect(record.notes).toContain('GHI: 1 gap filled by a straight line, 10 min in all.')
})

it('reads year, day of year and a clock without leading zeros', () => {
  const clocks = [58, 59, 100, 101]
  const text = `Year,DOY,MST,Global Horiz (tracker) [W/m^2],Global Horiz (platform) [W/m^2],Air Temperature [deg C]\n${clocks
    .map((clock, i) => `2018,291,${clock},${i},99,16`)
    .join('\n')}\n`
  const record = read(text)
  expect(record.startMs).toBe(Date.UTC(2018, 9, 18, 0, 58))
  expect(record.utcOffsetMinutes).toBe(-420)
  expect([...record.ghi]).toEqual([0, 1, 2, 3])
  expect(record.notes).toContain(
    '"Global Horiz (tracker) [W/m^2]" read as ghi (not "Global Horiz (platform) [W/m^2]").',
  )
})

it('knows a global named by its instrument, and not its neighbours on other planes', () => {
  const header = 'Global 40-South [W/m^2],Global Normal [W/m^2],Global CMP22 (vent/cor) [W/m^2]'
  const record = read(`time,${header}\n${rows(6, () => '1,2,3', withOffset)}`)
  expect(record.ghi[0]).toBe(3)
})

it('takes hours counted from 1 to 24 as ends of their hours', () => {
  const hours = Array.from({ length: 24 }, (_, i) => `2024,6,1,${i + 1},${i}`).join('\n')
  const record = read(`# utc_offset_hours: 1\nyear,month,day,hour,ghi_w_m2\n${hours}\n`)
  expect(record.startMs).toBe(Date.UTC(2024, 5, 1))
  expect(record.ghi).toHaveLength(24)
})

it('lays a typical year in compact stamps on 2001', () => {
  const lines = Array.from({ length: 8760 }, (_, i) => {
    const date = new Date(Date.UTC(2001, 0, 1) + i * 3_600_000)
    const year = 2005 + ((date.getUTCMonth() * 7) % 10)
    const day = date.toISOString().slice(5, 10).replace('-', '')
    return `${year}${day}:${date.toISOString().slice(11, 13)}00,${i % 24}`
  })
  const record = read(
    `Latitude (decimal degrees): 45.8\n\ntime(UTC),G(h)\n${lines.join('\n')}\n\nG(h): global\n`,
  )
  expect(record.typicalYear).toBe(true)
  expect(record.startMs).toBe(Date.UTC(2001, 0, 1))
  expect(record.ghi).toHaveLength(8760)
})

it('reads a daily station file: flags, missing codes, UTC, ends of minutes, west written positive', () => {
  const row = (minute: number, ghi: string, air: string) => {
    const pairs = [
      ghi,
      '0',
      '1',
      '2',
      '186',
      '-5',
      '-6',
      '276',
      '-6',
      '-6',
      '-9999.9',
      '-9999.9',
      '-1',
      '-89',
      '-90',
      air,
      '52.7',
      '3.1',
      '304',
      '773',
    ]
    return ` 2016   1  1  1  0 ${String(minute).padStart(2)}  0.000  91.65 ${pairs.map((value) => `${value} ${value === '-9999.9' ? 1 : 0}`).join(' ')}`
  }
  const text = ` Alamosa\n   37.70  105.92 2317 m version 1\n${[row(0, '-1.8', '-7.6'), row(1, '5', '-9999.9'), row(2, '7', '-7.8')].join('\n')}\n`
  const record = read(text)
  expect(record.name).toBe('SURFRAD (Alamosa)')
  expect(record.startMs).toBe(Date.UTC(2015, 11, 31, 23, 59))
  expect([...record.ghi]).toEqual([0, 5, 7])
  expect(record.airC?.[1]).toBeCloseTo(-7.7, 12)
  expect(record.utcOffsetMinutes).toBe(0)
  expect(record.site?.longitudeDeg).toBe(-105.92)
})

it('refuses an empty file', () => {
  expect(refused(' \n')).toBe('w.csv:1 must be a weather file, got an empty file')
})
