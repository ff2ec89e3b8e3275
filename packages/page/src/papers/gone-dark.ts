// What to do when the island is gone: an overload, or an empty battery.

import { aloneTooMuch, type House, type Rules, solarGroups } from '@tideover/core'
import { loadsOffWords } from '../words/loads-off.js'
import { type Html, list, tag } from './html.js'
import { equippedOf, type PapersInput, wordsOf } from './input.js'
import { wholePercent } from './numbers.js'

export function whenDark(input: PapersInput): Html {
  const { house, rules } = equippedOf(input)
  const { board } = wordsOf(input)
  const tries = `It tries again by itself ${rules.retries} times, a minute apart; then it has to be reset at the battery inverter.`
  const { highest, backHighest } = loadsOffWords(input.prepared, equippedOf(input), wholePercent)
  return tag('div', [
    tag('h3', 'It has gone dark'),
    list(
      [
        `Dark at a charge well above ${highest}: too much at once. Switch off ${culprits(input)}. ${tries}`,
        `Near ${highest} or less: empty; ${whatWakes(house, rules, backHighest)}`,
        `It stays dark: switch loads off at the ${board}, bring them back one after another.`,
      ],
      'ol',
    ),
  ])
}

/** What is likely to have been too much. */
function culprits(input: PapersInput): string {
  const alone = aloneTooMuch(input.prepared, equippedOf(input)).find(({ critical }) => !critical)
  const rest = 'kettles, heaters and motors'
  return alone === undefined ? rest : `${alone.name} (too much even alone), ${rest}`
}

/** What brings an empty island back, by the settings. */
function whatWakes(house: House, rules: Rules, back: string): string {
  const ways: string[] = []
  if (house.inverter.whenEmpty === 'retries') {
    ways.push(`it tries by itself at ${house.inverter.retryAt.join(', ')}`)
  }
  if (house.inverter.whenEmpty === 'holds') {
    ways.push(`loads return by themselves once the charge is back at ${back}`)
  }
  if (rules.wakesOnSun) ways.push('sun on the panels wakes the battery')
  if (rules.wakesOnGenerator) {
    ways.push(
      house.generator?.start === 'automatic'
        ? `the generator starts by itself, if there is fuel in its tank${(house.generator?.cansL ?? 0) > 0 ? ' (pour in the cans)' : ''}`
        : 'start the generator',
    )
  }
  if (rules.wakesOnPerson) ways.push('in sunshine form the island by hand with its loads off')
  ways.push('the grid brings it back')
  const sun =
    solarGroups(house).length > 0 && !rules.wakesOnSun
      ? ' Sunshine alone does not: its inverter needs an island to feed.'
      : ''
  return `${ways.join('; or ')}.${sun}`
}
