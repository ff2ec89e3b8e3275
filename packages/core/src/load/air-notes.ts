// What is said of loads that follow the air.

import type { House, LoadInput } from '../house/house.js'

/** One sentence a way of following it; none for a house without such loads. */
export function airNotes({ loads, sky }: Pick<House, 'loads' | 'sky'>): string[] {
  const names = (which: (load: LoadInput) => boolean): string =>
    loads
      .filter(which)
      .map(({ name }) => name)
      .join(', ')
  const margin = `taken ${sky.airMarginK} K`
  const power = names(({ byAir }) => byAir !== undefined)
  const days = names(({ runs }) => typeof runs === 'object')
  const cold = names(({ cycle }) => cycle?.insideC !== undefined)
  const notes: string[] = []
  if (power !== '') {
    notes.push(
      `${power}: power by the mean air of the season, ${margin} to its cautious side and alike in ` +
        'every sky and year; a colder spell draws more.',
    )
  }
  if (days !== '') {
    notes.push(
      `${days}: runs on the days whose mean air of the season, ${margin} colder, is below its ` +
        'limit, alike in every sky and year; a colder spell runs it on more days.',
    )
  }
  if (cold !== '') {
    notes.push(
      `${cold}: on for longer in a warm room, by the mean air of the season, ${margin} warmer; a ` +
        'warmer spell takes more.',
    )
  }
  return notes
}
