// A number for a load's name, so that its chance moves with no other load.

/**
 * @param from  whole number the hash begins with
 * @returns     32-bit whole number
 */
export function nameHash(name: string, from: number): number {
  let hash = from
  for (const char of name) hash = (Math.imul(hash, 31) + (char.codePointAt(0) ?? 0)) | 0
  return hash
}
