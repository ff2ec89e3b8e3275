// Where in the source a field stands.

import { type Document, isAlias, isMap, isNode, isScalar, isSeq, type LineCounter } from 'yaml'

/**
 * Finds the line of a path in a parsed document.
 *
 * Segments are separated by dots or brackets; where a field's own name holds a dot, the longest
 * name that fits is taken. An item of a list is named by its number from 0, or by its `name`.
 *
 * @returns A function from path to line, from 1; the line of the nearest group for what is absent
 */
export function lineFinder(document: Document, lines: LineCounter): (path: string) => number {
  return (path) => {
    const segments = path
      .replaceAll(/\[([^\]]*)\]/g, '.$1')
      .split('.')
      .filter((segment) => segment !== '')
    let node: unknown = document.contents
    let offset = offsetOf(node) ?? 0
    for (let i = 0; i < segments.length; ) {
      const step = descend(isAlias(node) ? node.resolve(document) : node, segments, i)
      if (step === null) break
      offset = step.offset ?? offset
      node = step.node
      i = step.next
    }
    return lines.linePos(offset).line
  }
}

interface Step {
  readonly node: unknown
  readonly offset: number | null
  readonly next: number
}

function descend(node: unknown, segments: readonly string[], at: number): Step | null {
  if (isMap(node)) {
    for (let next = segments.length; next > at; next--) {
      const name = segments.slice(at, next).join('.')
      const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === name)
      if (pair !== undefined) return { node: pair.value, offset: offsetOf(pair.key), next }
    }
  }
  if (isSeq(node)) {
    const name = segments[at] ?? ''
    const item = /^\d+$/.test(name)
      ? node.items[Number(name)]
      : node.items.find((each) => isMap(each) && each.get('name') === name)
    if (item !== undefined) return { node: item, offset: offsetOf(item), next: at + 1 }
  }
  return null
}

function offsetOf(node: unknown): number | null {
  return isNode(node) ? (node.range?.[0] ?? null) : null
}
