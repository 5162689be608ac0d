/** The text in the bytes of a file, as spreadsheets write it. */

/** UTF-8, or UTF-16 where a mark in front says so; null for anything else: letters would go wrong. */
export function textIn(bytes: Uint8Array): string | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return decoded("utf-16le", bytes);
  if (first === 0xfe && second === 0xff) return decoded("utf-16be", bytes);
  return decoded("utf-8", bytes);
}

function decoded(encoding: string, bytes: Uint8Array): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch (trouble) {
    if (trouble instanceof TypeError) return null;
    throw trouble;
  }
}
