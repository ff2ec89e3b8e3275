// Paper 2: what an installer enters on the devices, and what is found on them afterwards.

import { BLANK, type Html, line, row, sheet, table, tag } from './html.js'
import { frameOf, type PapersInput } from './input.js'
import { type SettingRow, settingRows } from './settings.js'

const HEAD = ['setting', 'assumed', 'from', 'as left']
const WIDTHS = [38, 19, 27, 16]

/** Up to so many rows each has room for handwriting. */
const ROOMY_ROWS = 23
/** Beyond so many the type is smaller. */
const MOST_ROWS = 34

export function settingsSheet(input: PapersInput): string {
  const rows = settingRows(input)
  const room = rows.length > MOST_ROWS ? '.dense' : rows.length > ROOMY_ROWS ? '' : '.roomy'
  return sheet(
    `settings-sheet${room}`,
    frameOf(input, 2, 'Settings', 'For the installer, and the next one'),
    [
      tag(
        'p',
        'What the answer assumes. Enter it on the device, or write down what is set there and ask ' +
          'again: a different setting is a different answer. Charge is a share of usable capacity. ' +
          'cp: common practice, no source. The data sheet of the equipment wins.',
      ),
      table(HEAD, grouped(rows), WIDTHS),
      tag('div.lines', [
        line('set by'),
        line('signature'),
        line('date'),
        line('firmware of inverter and battery'),
      ]),
    ],
  )
}

function grouped(rows: readonly SettingRow[]): Html[] {
  return rows.flatMap((setting, i) => {
    const { device, label, value, from, paths } = setting
    const head = row([tag('td', device, ` colspan="${HEAD.length}"`)], ' class="group"')
    const cells = row(
      [label, tag('td', tag('b', value)), from, BLANK],
      ` data-paths="${paths.join(' ')}"`,
    )
    return rows[i - 1]?.device === device ? [cells] : [head, cells]
  })
}
