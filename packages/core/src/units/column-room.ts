// Room for columns that are made again and again, window after window: what was handed out is
// handed out anew, so that no more is held than one window needs.

/** Hands out columns, all 0. */
export class ColumnRoom {
  private readonly buffers: ArrayBuffer[] = []
  private taken = 0

  floats(n: number): Float64Array {
    return new Float64Array(this.take(n * Float64Array.BYTES_PER_ELEMENT), 0, n)
  }

  ints(n: number): Int32Array {
    return new Int32Array(this.take(n * Int32Array.BYTES_PER_ELEMENT), 0, n)
  }

  flags(n: number): Uint8Array {
    return new Uint8Array(this.take(n), 0, n)
  }

  /** A column with the values of another. */
  copy(column: Float64Array): Float64Array {
    const out = this.floats(column.length)
    out.set(column)
    return out
  }

  /** All that was handed out may be handed out again: nobody looks into it any more. */
  clear(): void {
    this.taken = 0
  }

  /** The next of its buffers, a larger one where that is too small. */
  private take(bytes: number): ArrayBuffer {
    const at = this.taken++
    const there = this.buffers[at]
    if (there !== undefined && there.byteLength >= bytes) {
      new Uint8Array(there, 0, bytes).fill(0)
      return there
    }
    const fresh = new ArrayBuffer(bytes)
    this.buffers[at] = fresh
    return fresh
  }
}
