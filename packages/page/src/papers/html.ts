// The few shapes of which the papers are made. Everything given as text is escaped here.

import { escapeHtml } from '../escape.js'

/** HTML that is safe already. */
export interface Html {
  readonly html: string
}

type Content = string | Html | readonly (string | Html)[]

export function html(content: Content): string {
  if (typeof content === 'string') return escapeHtml(content)
  return 'html' in content ? content.html : content.map(html).join('')
}

/** `tag('p', 'text')`, `tag('td.num', '4')`, with classes after dots. */
export function tag(name: string, content: Content = '', attributes = ''): Html {
  const [element, ...classes] = name.split('.')
  const named = classes.length === 0 ? '' : ` class="${classes.join(' ')}"`
  return { html: `<${element}${named}${attributes}>${html(content)}</${element}>` }
}

export function list(items: readonly Content[], name = 'ul'): Html {
  return tag(
    name,
    items.map((item) => tag('li', item)),
  )
}

/** A room to write in. */
export const BLANK: Html = { html: '<td class="blank"></td>' }

/** Cells as they come: a text becomes a cell, an Html is one already. */
export function row(cells: readonly (string | Html)[], attributes = ''): Html {
  return tag(
    'tr',
    cells.map((cell) => (typeof cell === 'string' ? tag('td', cell) : cell)),
    attributes,
  )
}

/** @param widths  of the columns, in percent of the sheet */
export function table(
  head: readonly string[],
  rows: readonly Html[],
  widths: readonly number[],
): Html {
  return tag('table', [
    tag(
      'colgroup',
      widths.map((width) => ({ html: `<col style="width:${width}%">` })),
    ),
    tag(
      'thead',
      tag(
        'tr',
        head.map((text) => tag('th', text)),
      ),
    ),
    tag('tbody', rows),
  ])
}

/** A line to write on, with what belongs there. */
export function line(label: string): Html {
  return tag('div.line', tag('span', label))
}

/** Cut where it is longer, whole signs kept. @param most  signs, the mark of the cut among them */
export function cutName(name: string, most: number): string {
  const plain = name.replace(/\s+/g, ' ').trim()
  const signs = Array.from(new Intl.Segmenter().segment(plain), ({ segment }) => segment)
  return signs.length <= most
    ? plain
    : `${signs
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`
}

/** Names with those that are too many counted. */
export function someNames(names: readonly string[], most: number, signs: number): string[] {
  const shown = names.length > most ? names.slice(0, most - 1) : names
  const more = names.length - shown.length
  const cut = shown.map((name) => cutName(name, signs))
  return more === 0 ? cut : [...cut, `and ${more} more`]
}

/** Signs that are read in some parts of a sheet. */
export function textLength(body: readonly Html[]): number {
  return html(body).replace(/<[^>]*>/g, '').length
}

export interface SheetFrame {
  readonly number: number
  readonly title: string
  readonly house: string
  readonly invented: boolean
  /** For whom it is, on the right of the head. */
  readonly by: string
  /** The caution at the foot of every sheet. */
  readonly foot: string
}

/** One paper. @param name  its class beside `sheet` */
export function sheet(name: string, frame: SheetFrame, body: readonly Html[]): string {
  const { number, title, house, invented, by, foot } = frame
  const whose = `${cutName(house, 60)}${invented ? ' (an invented house)' : ''}`
  return html(
    tag(`section.sheet.${name}`, [
      tag('header', [tag('h2', title), tag('p', [tag('b', whose), tag('span', by)])]),
      tag('div.body', body),
      tag('footer', [tag('span', foot), tag('span', `${number} of 5`)]),
    ]),
  )
}
