// Notebooks run under tslab's own compiler and executor, with no Jupyter.

import { fileURLToPath } from 'node:url'
import { type Output, startRunner } from '@tideover/notebook/run'
import { afterAll, describe, expect, it } from 'vitest'

const runner = startRunner(fileURLToPath(new URL('fixtures', import.meta.url)))
afterAll(() => runner.close())

function html(outputs: readonly Output[]): string {
  return outputs.map((one) => (one.kind === 'display' ? one.data['text/html'] : '')).join('')
}

describe('a notebook that runs', () => {
  it('hands back what each cell put out, and the values asked for', {
    timeout: 60_000,
  }, async () => {
    const { cells, values } = await runner.run('chart-and-table.ipynb', { values: ['longest'] })
    const [setUp, columns, chart, rows, data, last] = cells.map(({ outputs }) => outputs)
    expect(html(setUp!)).toContain('DecompressionStream')
    expect(columns).toEqual([{ kind: 'text', stream: 'stdout', text: 'three hours\n' }])
    expect(html(chart!)).toContain('"y":[1,0.8,null]')
    expect(html(rows!)).toContain('<caption>Shares</caption>')
    expect(html(data!)).toContain('>share</th>')
    expect(last).toEqual([{ kind: 'text', stream: 'stdout', text: '3\n' }])
    expect(values).toEqual({ longest: 3 })
  })
})

describe('a line that follows a long run', () => {
  it('is one output that moves, and is gone at the end', async () => {
    const { cells } = await runner.run('progress.ipynb')
    const [line, gone, ...more] = cells[0]!.outputs
    expect(html([line!])).toContain('<progress value="2" max="2" aria-label="Counting &lt; 3">')
    expect(html([line!])).toContain('Counting &lt; 3: 2 of 2')
    expect(html([gone!])).toBe('<span></span>')
    expect(more).toEqual([])
  })
})

describe('a notebook that fails', () => {
  it('names the cell and says what the compiler said', async () => {
    await expect(runner.run('wrong-type.ipynb')).rejects.toThrow(
      "wrong-type.ipynb, cell 2:\n  1 | const two: string = one\n  2 | two\n\n1:7 - Type 'number' is not assignable to type 'string'.",
    )
  })

  it('says what a cell threw, without the frames of what ran it', async () => {
    const message = await runner.run('throws.ipynb').catch((error: Error) => error.message)
    expect(message).toContain('throws.ipynb, cell 2:\n  1 | // a comment\n  2 | spoil()')
    expect(message).toContain('Error: the battery is missing')
    expect(message).not.toContain('tslab')
  })

  it('knows no variable of the notebook before it', async () => {
    const { values } = await runner.run('counts.ipynb', { values: ['one', 'longest'] })
    expect(values).toEqual({ one: 1, longest: undefined })
  })

  it('survives a cell that ends the process', async () => {
    await expect(runner.run('ends.ipynb')).rejects.toThrow('cell 1: the process ended with 3')
    await expect(runner.run('counts.ipynb')).resolves.toMatchObject({ cells: [{ cell: 1 }] })
  })

  it('ends a cell that does not end', async () => {
    const run = runner.run('hangs.ipynb', { mostSeconds: 1 })
    await expect(run).rejects.toThrow('hangs.ipynb, cell 1: still running after 1 s')
  })

  it('says that there is no such notebook', async () => {
    await expect(runner.run('nowhere.ipynb')).rejects.toThrow('no such file')
  })
})
