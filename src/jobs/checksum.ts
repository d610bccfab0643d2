/**
 * CRC-32 of a text's UTF-16 code units, low byte first: whether a text that is read is the one that was written.
 *
 * @source ISO/IEC/IEEE 8802-3 (Ethernet), 3.2.9: polynomial 04C11DB7, bits reflected (EDB88320), begun with and turned
 * over by FFFFFFFF
 */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ POLYNOMIAL : rest >>> 1;
  return rest;
});

const with8 = (sum: number, byte: number) => (sum >>> 8) ^ TABLE[(sum ^ byte) & 0xff]!;

export function checksum(text: string): number {
  let sum = 0xffffffff;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    sum = with8(with8(sum, unit & 0xff), unit >>> 8);
  }
  return (sum ^ 0xffffffff) >>> 0;
}
