// A weather file to a weather record, whatever form it came in.

import type { WeatherRecord } from '@tideover/core'
import { Faults } from '../faults.js'
import { readText } from '../text/read-text.js'
import { isEpw, readEpw } from './epw.js'
import { layOnAxis } from './lay-on-axis.js'
import { readPlainCsv } from './plain-csv.js'
import { isSurfrad, readSurfrad } from './surfrad.js'
import { isTmy3, readTmy3 } from './tmy3.js'

/**
 * Reads irradiance, air temperature and wind.
 *
 * Known by content: EPW, TMY3 CSV, daily SURFRAD files, and a plain table with named columns.
 * Gaps up to 3 h are filled by a straight line, irradiance below zero is taken as 0; both are
 * told in the notes.
 *
 * @param path  The file
 * @throws      InputError with every fault: `file:line`, what is needed, what came
 */
export function readWeather(path: string): WeatherRecord {
  return weatherFromText(readText(path), path)
}

/**
 * The same from text, for where there is no disk.
 *
 * @param name  Leads every message; a plain table takes it as the name of the record
 */
export function weatherFromText(text: string, name: string): WeatherRecord {
  const faults = new Faults(name)
  if (text.trim() === '') faults.refuse(1, 'a weather file', 'an empty file')
  const raw = isEpw(text)
    ? readEpw(text, faults)
    : isTmy3(text)
      ? readTmy3(text, faults)
      : isSurfrad(text)
        ? readSurfrad(text, faults)
        : readPlainCsv(text, name, faults)
  return layOnAxis(raw, faults)
}
