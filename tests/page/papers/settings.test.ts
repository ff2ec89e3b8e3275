// No setting of a device is forgotten: every field of the schema is on the sheet or has its reason.

import { houseJsonSchema } from '@tideover/core'
import { settingsSheet } from '@tideover/page'
import { describe, expect, it } from 'vitest'
import { ALL_SETTINGS, shipped, small } from './houses.js'

/** Fields and groups that nobody enters on a device, and why. */
const NOT_SETTINGS: Readonly<Record<string, string>> = {
  $schema: 'for editors',
  house: 'a name',
  invented: 'a mark',
  year: 'of the simulation',
  seed: 'of the simulation',
  'site.latitudeDeg': 'where it stands',
  'site.longitudeDeg': 'where it stands',
  'site.elevationM': 'where it stands',
  'site.timezone': 'where it stands',
  sky: 'the weather',
  loads: 'stand on the circuit list',
  heatingMonths: 'a habit',
  holidays: 'a habit',
  person: 'a habit; stands on the cut card',
  'gateway.changeoverMs': 'measured on the island test',
  'inverter.ratedKva': 'read off the plate',
  'inverter.startingKva': 'read off the data sheet',
  'inverter.minuteKva': 'read off the data sheet',
  'inverter.idleW': 'read off the data sheet',
  'inverter.roundTrip': 'read off the data sheet',
  'stack.module': 'read off the data sheet',
  'stack.modulesMax': 'room on the base',
  'stack.health': 'read on the yearly checks',
  'stack.place': 'where it stands',
  'stack.electronicsW': 'read off the data sheet',
  'stack.selfDischargePerMonth': 'read off the data sheet',
  'stack.heaterW': 'read off the data sheet',
  'arrays[].name': 'a name',
  'prices.arrayPerKw': 'money, no setting',
  'prices.generator': 'money, no setting',
  'arrays[].peakKw': 'read off the plate',
  'arrays[].tiltDeg': 'how it is built',
  'arrays[].azimuthDeg': 'how it is built',
  'arrays[].onInverterOf': 'how it is wired',
  'arrays[].file': 'a record',
  'arrays[].column': 'a record',
  'arrays[].zone': 'a record',
  'arrays[].lossShare': 'of the simulation',
  'arrays[].ageYears': 'read off the plate',
  'arrays[].perKelvin': 'read off the data sheet',
  'arrays[].horizon': 'how it is built',
  'arrays[].inverter.ratedKw': 'read off the plate',
  'arrays[].inverter.efficiency': 'read off the data sheet',
  'generator.ratedKw': 'read off the plate',
  'generator.tankL': 'stands on cut card and yearly checks',
  'generator.cansL': 'stands on cut card and yearly checks',
  'generator.litresPerHour': 'read off the data sheet',
  'generator.startingKva': 'read off the data sheet',
  'generator.startFailsShare': 'a chance',
  'generator.hoursBetweenFailures': 'a chance',
}

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>
  readonly items?: Schema
}

/** Paths of all fields, groups that are not settings left whole. */
function fieldsOf({ properties = {} }: Schema, at = ''): string[] {
  return Object.entries(properties).flatMap(([name, below]) => {
    const path = `${at}${name}`
    if (path in NOT_SETTINGS) return [path]
    if (below.properties !== undefined) return fieldsOf(below, `${path}.`)
    if (below.items?.properties !== undefined) return fieldsOf(below.items, `${path}[].`)
    return [path]
  })
}

function pathsOn(html: string): Set<string> {
  const found = [...html.matchAll(/data-paths="([^"]*)"/g)].flatMap(([, paths]) =>
    paths!.split(' '),
  )
  return new Set(found.map((path) => path.replace(/\[\d+\]/g, '[]')))
}

const FIELDS = fieldsOf(houseJsonSchema() as Schema)

describe('the settings sheet', () => {
  it('has every field of the schema that a device is told', () => {
    const shown = pathsOn(settingsSheet(small(ALL_SETTINGS)))
    expect(FIELDS.length).toBeGreaterThan(60)
    expect(FIELDS.filter((path) => !(path in NOT_SETTINGS) && !shown.has(path))).toEqual([])
  })

  it('gives a reason for fields that there are only', () => {
    expect(Object.keys(NOT_SETTINGS).filter((path) => !FIELDS.includes(path))).toEqual([])
  })

  it('shows the value, its unit and where it comes from', () => {
    const sheet = settingsSheet(shipped('croft'))
    const row = (path: string): string => {
      const [, cells] = new RegExp(`data-paths="${path}"[^>]*>(.*?)</tr>`).exec(sheet)!
      return cells!.replace(/<\/td>/g, '|').replace(/<[^>]*>/g, '')
    }
    expect(row('gateway\\.mainFuseA')).toBe('import limit, main fuse|80 A|house file||')
    expect(row('stack\\.reserve')).toBe('reserve held back for a cut|40 %|house file||')
    expect(row('inverter\\.chargeKw')).toBe('charge limit, AC side|5 kW|default: cp||')
    // 0.8 of 3 kW.
    expect(row('generator\\.mostShare')).toContain('80 %, 2.4 kW|default: cp; 0.7-0.9|')
    expect(row('gateway\\.exportLimitKw')).toContain('|none|default: none is named|')
    expect(row('arrays\\[0\\]\\.inverter\\.reconnectSeconds')).toContain('|180 s|house file|')
  })

  it('tells a group that is half from the file', () => {
    const sheet = settingsSheet(small({ comfort: { dropBelow: 0.3 }, loads: LOADS }))
    expect(sheet).toContain('<b>30 % / 60 %</b></td><td>house file; default: cp</td>')
  })
})

const LOADS = [
  { name: 'pump', tier: 'critical', w: 390 },
  { name: 'lamp', tier: 'comfort', w: 10 },
]
