import { houseJsonSchema } from '@tideover/core'
import { sayJson } from '../output.js'

/** `schema`: the rules of a house file for an editor. */
export function schema(): void {
  sayJson(houseJsonSchema())
}
