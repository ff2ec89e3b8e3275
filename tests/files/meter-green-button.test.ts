// Green Button XML (NAESB REQ.21): units, multipliers, blocks out of order, net meters.
//
// 912 Wh in the hour from Unix second 1563440400 (2019-07-18T09:00:00Z) is a published sample.

import { meterFromText } from '@tideover/files'
import { expect, it } from 'vitest'
import { refusal } from './problems.js'

const START = 1563440400

interface Type {
  uom?: number
  flow?: number
  power?: number
  accumulation?: number
}

function typeEntry(id: number, { uom = 72, flow = 1, power = 0, accumulation = 4 }: Type): string {
  return `<entry><link rel="self" href="R/ReadingType/${id}"/><content><espi:ReadingType>
    <espi:accumulationBehaviour>${accumulation}</espi:accumulationBehaviour>
    <espi:flowDirection>${flow}</espi:flowDirection><espi:intervalLength>3600</espi:intervalLength>
    <espi:powerOfTenMultiplier>${power}</espi:powerOfTenMultiplier><espi:uom>${uom}</espi:uom>
  </espi:ReadingType></content></entry>
  <entry><link rel="self" href="U/MeterReading/${id}"/>
    <link rel="related" href="R/ReadingType/${id}"/>
    <content><espi:MeterReading/></content></entry>`
}

function reading(hour: number, value: number, seconds = 3600, quality = ''): string {
  return `<espi:IntervalReading>${quality}<espi:timePeriod><espi:duration>${seconds}</espi:duration>
    <espi:start>${START + hour * 3600}</espi:start></espi:timePeriod>
    <espi:value>${value}</espi:value></espi:IntervalReading>\n`
}

function block(id: number, readings: string, name = 'IntervalBlock'): string {
  return `<entry><link rel="up" href="U/MeterReading/${id}/IntervalBlock"/><content>
    <espi:${name}>${readings}</espi:${name}></content></entry>\n`
}

function feed(...entries: string[]): string {
  return `<?xml version="1.0"?>\n<feed xmlns="http://www.w3.org/2005/Atom" xmlns:espi="http://naesb.org/espi">\n${entries.join('')}</feed>`
}

const read = (text: string) => meterFromText(text, 'g.xml', 'Europe/London')
const refused = (text: string) => refusal(() => read(text))

it('reads Wh of an hour as kW, with the start in UTC', () => {
  const record = read(feed(typeEntry(1, {}), block(1, reading(0, 912) + reading(1, 500))))
  expect(record.startMs).toBe(Date.UTC(2019, 6, 18, 9))
  expect([...record.kw]).toEqual([0.912, 0.5])
})

it('multiplies by the power of ten, and reads W as power', () => {
  const kilo = read(feed(typeEntry(1, { power: 3 }), block(1, reading(0, 2) + reading(1, 1))))
  expect([...kilo.kw]).toEqual([2, 1])
  const watts = read(feed(typeEntry(1, { uom: 38 }), block(1, reading(0, 900) + reading(1, 30))))
  expect([...watts.kw]).toEqual([0.9, 0.03])
})

it('puts blocks that come out of order in order', () => {
  const late = block(1, reading(2, 300) + reading(3, 400))
  const early = block(1, reading(0, 100) + reading(1, 200))
  expect([...read(feed(typeEntry(1, {}), late, early)).kw]).toEqual([0.1, 0.2, 0.3, 0.4])
})

it('reads the spelling IntervalBLock', () => {
  const text = feed(typeEntry(1, {}), block(1, reading(0, 1) + reading(1, 2), 'IntervalBLock'))
  expect(read(text).kw).toHaveLength(2)
})

it('spreads a longer interval over the step of the others', () => {
  const text = feed(typeEntry(1, {}), block(1, reading(0, 500, 1800) + reading(0.5, 900, 5400)))
  expect([...read(text).kw]).toEqual([1, 0.6, 0.6, 0.6])
})

it('places readings without a time of their own by the length of the interval', () => {
  const bare = '<espi:IntervalReading><espi:value>100</espi:value></espi:IntervalReading>'
  const whole = `<espi:interval><espi:duration>7200</espi:duration><espi:start>${START}</espi:start></espi:interval>`
  expect([...read(feed(typeEntry(1, {}), block(1, whole + bare + bare))).kw]).toEqual([0.1, 0.1])
})

it('says how many readings are marked as estimated', () => {
  const quality = '<espi:ReadingQuality><espi:quality>8</espi:quality></espi:ReadingQuality>'
  const text = feed(typeEntry(1, {}), block(1, reading(0, 1, 3600, quality) + reading(1, 1)))
  expect(read(text).notes).toContain('1 reading marked as estimated.')
})

it('subtracts neighbours of a register', () => {
  const readings = reading(0, 5000) + reading(1, 5600) + reading(2, 5900)
  const text = feed(typeEntry(1, { accumulation: 3 }), block(1, readings))
  expect([...read(text).kw]).toEqual([0.6, 0.3])
})

it('reads what is taken and what is given of a net meter, one beside the other', () => {
  const record = read(
    feed(
      typeEntry(1, {}),
      typeEntry(2, { flow: 19 }),
      block(1, reading(0, 900) + reading(1, 0) + reading(2, 100)),
      // Blocks of the second channel begin and end elsewhere.
      block(2, reading(1, 1500) + reading(2, 20) + reading(3, 5)),
    ),
  )
  expect([...record.kw]).toEqual([0.9, 0, 0.1])
  expect([...record.exportKw!]).toEqual([Number.NaN, 1.5, 0.02])
  expect(record.notes.join('\n')).toContain('1.5 kWh given to the grid')
})

it('refuses two directions on different steps', () => {
  const text = feed(
    typeEntry(1, {}),
    typeEntry(2, { flow: 19 }),
    block(1, reading(0, 900) + reading(1, 0)),
    block(2, reading(0, 0, 1800) + reading(0.5, 100, 1800)),
  )
  expect(refused(text)).toContain(
    'must be what is given in intervals of 60 min, as what is taken, got 30 min',
  )
})

it('parts the net flow: 4 counts what is taken less what is given', () => {
  const net = feed(typeEntry(1, { flow: 4 }), block(1, reading(0, 700) + reading(1, -300)))
  const record = read(net)
  expect(record.kw[0]).toBeCloseTo(0.7, 12)
  expect(record.kw[1]).toBe(0)
  expect([...record.exportKw!]).toEqual([0, 0.3])
})

it('reads the import where the export channel is there but always zero', () => {
  const text = feed(
    typeEntry(1, {}),
    typeEntry(2, { flow: 19 }),
    block(1, reading(0, 900) + reading(1, 100)),
    block(2, reading(0, 0) + reading(1, 0)),
  )
  expect([...read(text).kw]).toEqual([0.9, 0.1])
})

it.each([
  ['reactive flow', feed(typeEntry(1, { flow: 15 }), block(1, reading(0, 1))), 'got 15'],
  ['gas', feed(typeEntry(1, { uom: 169 }), block(1, reading(0, 1))), 'got unit codes 169'],
  ['no intervals', feed(typeEntry(1, {})), 'got no intervals'],
  [
    'two meters',
    feed(typeEntry(1, {}), block(1, reading(0, 1)), typeEntry(2, {}), block(2, reading(0, 1))),
    'got 2 channels',
  ],
  ['broken XML', '<feed>\n<entry>\n</feed>', 'well-formed XML'],
  ['a page of a website', '<html><body><p>Log in</p></body></html>', 'got no intervals'],
])('refuses %s', (_, text, message) => {
  expect(refused(text)).toContain(message)
})

it('refuses a record that is mostly a gap with the line of the reading after it', () => {
  const text = feed(typeEntry(1, {}), block(1, `${reading(0, 1)}${reading(1, 1)}${reading(9, 1)}`))
  const line = text.slice(0, text.lastIndexOf('<espi:IntervalReading>')).split('\n').length
  expect(refused(text)).toContain(`g.xml:${line} must be a record that is not mostly gaps`)
  expect(refused(text)).toContain('got 7 h without a reading from 2019-07-18 12:00')
})
