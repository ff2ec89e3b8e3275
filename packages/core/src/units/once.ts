// What follows from an object alone, worked out once for as long as that object lives.

/** @param make  pure: it may be called again, and gives what it gave before */
export function oncePer<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, V>()
  return (key) => {
    const there = known.get(key)
    if (there !== undefined) return there
    const fresh = make(key)
    known.set(key, fresh)
    return fresh
  }
}

/**
 * The same by a key of words or numbers, for the last key alone: enough for one house after
 * another at the same place, and no more is kept.
 */
export function lastOf<A, V>(key: (from: A) => unknown, make: (from: A) => V): (from: A) => V {
  let last: { readonly key: string; readonly value: V } | null = null
  return (from) => {
    const name = JSON.stringify(key(from))
    if (last?.key !== name) last = { key: name, value: make(from) }
    return last.value
  }
}
