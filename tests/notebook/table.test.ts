import { tableHtml } from '@tideover/notebook'
import { describe, expect, it } from 'vitest'

describe('tableHtml', () => {
  it('takes its columns from all rows, in the order in which they first appear', () => {
    const html = tableHtml([{ month: 1 }, { share: 0.5, month: 2 }])
    expect(html).toMatch(/<th[^>]*>month<\/th><th[^>]*>share<\/th>/)
  })

  it('shows what is missing as a dash, never as 0', () => {
    const html = tableHtml([{ a: Number.NaN, b: null, c: undefined }])
    expect(html.match(/>–</g)).toHaveLength(3)
  })

  it('rounds numbers and leaves text as it is, escaped', () => {
    const html = tableHtml([{ share: 0.12345, note: '<b> & "c"' }], { digits: 3 })
    expect(html).toContain('>0.123<')
    expect(html).toContain('&lt;b&gt; &amp; &quot;c&quot;')
  })

  it('counts the rows that it does not show', () => {
    const rows = Array.from({ length: 5 }, (_, row) => ({ row }))
    expect(tableHtml(rows, { mostRows: 2 })).toContain('… and 3 more rows')
  })

  it('takes a data frame by its columns and values', () => {
    const html = tableHtml({ columns: ['kw'], values: [[1.5], [2]] })
    expect(html).toContain('<th scope="col" style="text-align:right">kw</th>')
    expect(html).toContain('>1.5<')
  })
})
