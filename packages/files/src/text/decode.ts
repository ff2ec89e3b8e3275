// Bytes to text. Old loggers write Latin-1 degree signs; spreadsheets write a byte order mark.

import { InputError } from '@tideover/core'

/** How many bytes are looked at to tell text from a program or a picture. */
const LOOKED_AT = 8192

/**
 * Text of a file: UTF-8, or UTF-16 with its byte order mark, or else Windows Latin-1.
 *
 * @param bytes  The file
 * @param name   Its name, for the message
 * @throws       InputError where the bytes are no text
 */
export function decodeText(bytes: Uint8Array, name: string): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes)
  if (bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03) {
    throw new InputError([
      {
        where: `${name}:1`,
        need: 'a text file',
        got: 'a zip or spreadsheet file: export it as CSV',
      },
    ])
  }
  if (bytes.subarray(0, LOOKED_AT).includes(0)) {
    throw new InputError([{ where: `${name}:1`, need: 'a text file', got: 'binary data' }])
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}
