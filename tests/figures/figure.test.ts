import { figureJson } from '@tideover/figures'
import { describe, expect, it } from 'vitest'

describe('figureJson', () => {
  it('writes columns as lists and NaN as a gap', () => {
    const figure = { data: [{ type: 'scatter', y: Float64Array.of(1, Number.NaN) }], layout: {} }
    expect(figureJson(figure)).toBe('{"data":[{"type":"scatter","y":[1,null]}],"layout":{}}')
  })

  it('cannot end the script element that it stands in', () => {
    const figure = { data: [], layout: { title: { text: '</script>' } } }
    expect(figureJson(figure)).not.toContain('</script>')
    expect(JSON.parse(figureJson(figure))).toEqual(figure)
  })
})
