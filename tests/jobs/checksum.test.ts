import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checksum } from '../../src/jobs/checksum.ts';

/** Two bytes to a code unit, low byte first. */
const packed = (bytes: string) =>
  String.fromCharCode(
    ...Array.from({ length: bytes.length / 2 }, (_, i) => bytes.charCodeAt(2 * i) | (bytes.charCodeAt(2 * i + 1) << 8)),
  );

// CRC-32 of ASCII texts, as tables of test vectors have them.
test.each([
  ['', 0x00000000],
  ['12345678', 0x9ae0daaf],
  ['abcdefghijklmnopqrstuvwxyz', 0x4c2750bd],
])('the checksum of %j is the published one', (bytes, sum) => {
  expect(checksum(packed(bytes))).toBe(sum);
});

test('any one character changed changes it', () => {
  fc.assert(
    fc.property(fc.string({ minLength: 1 }), fc.nat(), fc.integer({ min: 1, max: 0xffff }), (text, at, change) => {
      const i = at % text.length;
      const other = text.slice(0, i) + String.fromCharCode(text.charCodeAt(i) ^ change) + text.slice(i + 1);
      expect(checksum(other)).not.toBe(checksum(text));
    }),
  );
});
