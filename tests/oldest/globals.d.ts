// Named by types of others, and known to browsers only.

type BufferSource = ArrayBufferView | ArrayBuffer
