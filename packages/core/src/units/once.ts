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
