import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checksum } from '../../src/jobs/checksum.ts';

// FNV-1a, 32 bits, of texts whose code units are bytes: the authors' own test vectors.
test.each([
  ['', 0x811c9dc5],
  ['a', 0xe40c292c],
  ['b', 0xe70c2de5],
  ['foobar', 0xbf9cf968],
])('the checksum of %j is the published one', (bytes, sum) => {
  expect(checksum(bytes)).toBe(sum);
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
