// The one door onto the page: whatever a house file holds stays text.

import { describe, expect, it } from 'vitest'
import { html, jsonMarkup } from '../../packages/page/src/html/html.js'

describe('a template', () => {
  it('escapes what is put into it, in text and in attributes', () => {
    const name = `<script>alert('1')</script> & "so"`
    expect(html`<b title="${name}">${name}</b>`.markup).toBe(
      '<b title="&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt; &amp; &quot;so&quot;">' +
        '&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt; &amp; &quot;so&quot;</b>',
    )
  })

  it('keeps what another template made, alone or in a list', () => {
    const items = ['a', '<'].map((text) => html`<li>${text}</li>`)
    expect(html`<ul>${items}</ul>${null}${false}${undefined}${0}`.markup).toBe(
      '<ul><li>a</li><li>&lt;</li></ul>0',
    )
  })

  it('escapes an object that only looks like markup', () => {
    const forged = JSON.parse('{"markup":"<script>"}')
    expect(html`${forged}`.markup).not.toContain('<script>')
  })

  it('leaves emoji and long texts as they are', () => {
    const long = '🦊é'.repeat(10_000)
    expect(html`${long}`.markup).toBe(long)
  })
})

describe('JSON in a script element', () => {
  it('holds nothing that ends the element, and reads back as it was', () => {
    const value = { name: '</script><!-- <script>', line: '\u2028\u2029', emoji: '🦊' }
    const { markup } = jsonMarkup(value)
    expect(markup).not.toMatch(/[<\u2028\u2029]/)
    expect(JSON.parse(markup)).toEqual(value)
  })
})
