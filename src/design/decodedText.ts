/**
 * The text of a file: UTF-8, or UTF-16 where its first bytes say so (a byte-order mark), as spreadsheets and editors
 * write them.
 */
export function decodedText(bytes: Uint8Array): string {
  const [first, second] = bytes;
  const encoding =
    first === 0xfe && second === 0xff ? 'utf-16be' : first === 0xff && second === 0xfe ? 'utf-16le' : 'utf-8';
  // The mark itself is left out.
  return new TextDecoder(encoding).decode(bytes);
}
