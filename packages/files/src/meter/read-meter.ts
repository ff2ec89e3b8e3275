// A meter file to a meter record, whatever form it came in.

import { InputError, type MeterRecord } from '@tideover/core'
import { Faults } from '../faults.js'
import { readText } from '../text/read-text.js'
import { zoneNamed } from '../time/zone.js'
import { meterFromCsv } from './csv-meter.js'
import { meterFromGreenButton } from './green-button.js'
import type { MeterOptions } from './meter-options.js'

export type { MeterOptions } from './meter-options.js'

/**
 * Reads the load that a meter or logger recorded.
 *
 * Known by content: separated text (comma, semicolon, tab) with named columns, and Green Button
 * XML (NAESB REQ.21). Gaps up to 2 h are filled by a straight line and told in the notes.
 *
 * @param path  The file
 * @param zone  Zone of the house, for stamps without an offset: an IANA name, or `UTC+1` for a
 *              meter that keeps one time all year
 * @throws      InputError with every fault: `file:line`, what is needed, what came
 */
export function readMeter(path: string, zone: string, options: MeterOptions = {}): MeterRecord {
  return meterFromText(readText(path), path, zone, options)
}

/**
 * The same from text, for where there is no disk.
 *
 * @param name  Leads every message and becomes the name of the record
 *
 * @example
 * meterFromText('time,load_kw\n2024-01-01 00:00,0.5\n2024-01-01 00:30,1\n', 'm.csv', 'Europe/Oslo')
 *   .kw // => Float64Array [0.5, 1]
 */
export function meterFromText(
  text: string,
  name: string,
  zone: string,
  options: MeterOptions = {},
): MeterRecord {
  const known = zoneNamed(zone)
  if (known === null) throw new InputError('zone', 'an IANA time zone, or UTC+1 and the like', zone)
  const faults = new Faults(name)
  if (text.trim() === '') faults.refuse(1, 'a file with readings', 'an empty file')
  return text.trimStart().startsWith('<')
    ? meterFromGreenButton(text, name, known, faults)
    : meterFromCsv(text, name, known, options, faults)
}
