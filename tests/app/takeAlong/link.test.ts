/** A design in a link: there and back, bounded, and refused in words where it is not whole. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { deflateSync, strToU8 } from 'fflate';
import { expect, test } from 'vitest';
import {
  designOfLink,
  isOwnDevice,
  LONGEST_LINK,
  linkOf,
  systemOfLink,
  wayOfLink,
} from '../../../src/app/takeAlong/link.ts';
import { codeOf } from '../../../src/app/takeAlong/QrCode.tsx';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { ANGLE_WAYS } from '../../../src/design/units.ts';

const FIRST = '#job=QwsbjFAg5E00J1LHl0C3UtuXqLFIepwZ6gH9BnEImAlyiIkeKFNh8RG6OUBnmIMCF5thUKNI81BsLQA';
const PAGE = 'https://shop.example/conepair/';
const folder = join(import.meta.dirname, '../../../assets/designs');
const demos = readdirSync(folder).map((file) => {
  const read = parseDesign(readFileSync(join(folder, file), 'utf8'));
  if (!read.ok) throw new Error(file);
  return [file, read.design] as const;
});
const hashOf = (link: string) => link.slice(link.indexOf('#'));
const base64url = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64url');

test.each(demos)('%s comes back from its link as it was', (_, design) => {
  const link = linkOf({ ...design, notes: 'ø 22 — “proud” 车' }, 'metric', 'half', PAGE)!;
  expect(link).toMatch(/^https:\/\/shop\.example\/conepair\/#job=[\w-]+&units=metric&angles=half$/);
  expect(designOfLink(hashOf(link))).toEqual({ ok: true, design: { ...design, notes: 'ø 22 — “proud” 车' } });
});

test('a link given away is read for ever: this one was made when links began', () => {
  expect(designOfLink(FIRST)).toEqual({ ok: true, design: { conepair: 1, seats: demos[0]![1].seats } });
});

test('the units and the way of angles go along; a link that names none, or others, leaves them as they are', () => {
  const [, design] = demos[0]!;
  for (const system of ['metric', 'inch'] as const)
    for (const way of ANGLE_WAYS) {
      const hash = hashOf(linkOf(design, system, way, PAGE)!);
      expect([systemOfLink(hash), wayOfLink(hash)]).toEqual([system, way]);
      expect(designOfLink(hash)).toEqual({ ok: true, design });
    }
  const inch = hashOf(linkOf(design, 'inch', 'foot', PAGE)!);
  for (const none of [FIRST, inch.replace('inch', 'inc'), inch.replace('inch', 'furlongs')])
    expect(systemOfLink(none)).toBeNull();
  for (const none of [FIRST, inch.slice(0, -1), inch.replace('foot', 'cubit'), inch.replace('angles', 'toString')])
    expect(wayOfLink(none)).toBeNull();
  // What a later program says of itself is no harm.
  expect([systemOfLink(`${inch}&more`), wayOfLink(`${inch}&more=1`)]).toEqual(['inch', 'foot']);
});

test('what is too long has no link', () => {
  const [, design] = demos[0]!;
  let seed = 1;
  const noise = Array.from({ length: 18_000 }, () => {
    seed = (seed * 48_271) % 2_147_483_647;
    return String.fromCharCode(33 + (seed % 90));
  }).join('');
  expect(linkOf({ ...design, notes: noise.slice(0, 2_000) }, 'metric', 'half', PAGE)).not.toBeNull();
  expect(
    linkOf({ ...design, notes: noise, title: noise.slice(0, 200), readings: [] }, 'metric', 'half', PAGE)?.length ?? 0,
  ).toBeLessThan(LONGEST_LINK + 1);
  const many: Design = {
    ...design,
    readings: Array.from({ length: 3_000 }, (_, i) => ({
      kind: 'standOff' as const,
      value: Math.sin(i * 1.7),
      sigma: 0.001 + (i % 97) / 1e4,
    })),
  };
  expect(linkOf(many, 'metric', 'half', PAGE)).toBeNull();
});

const wrongOf = (hash: string) => {
  const read = designOfLink(hash);
  return read.ok ? 'a design' : read.errors[0]!.message;
};

test('a link that is cut off anywhere is refused, and says what to do', () => {
  const hash = hashOf(linkOf(demos[0]![1], 'metric', 'half', PAGE)!);
  for (let length = '#job='.length; length < hash.indexOf('&'); length += 7)
    expect(wrongOf(hash.slice(0, length))).toMatch(/not whole: .*Ask for it again|not valid JSON|ends/);
});

test('bytes of any kind are a design or a message', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      const read = designOfLink(`#job=${base64url(bytes)}`);
      expect(read.ok || read.errors[0]!.message.length > 0).toBe(true);
    }),
    { numRuns: 300 },
  );
  expect(wrongOf('#job=%%%')).toMatch(/not whole/);
});

test('a small link that unfolds to much is given up', () => {
  const bomb = base64url(deflateSync(strToU8(`{"conepair":1,"notes":"${'a'.repeat(20_000_000)}"}`), { level: 9 }));
  expect(bomb.length).toBeLessThan(LONGEST_LINK);
  expect(wrongOf(`#job=${bomb}`)).toMatch(/not whole/);
  expect(wrongOf(`#job=${'a'.repeat(LONGEST_LINK)}`)).toMatch(/at most 32000 are read/);
});

test('a page of this device itself is told from one that others reach', () => {
  for (const page of ['http://localhost:4173/', 'http://127.0.0.1/', 'http://[::1]:80/', 'file:///tmp/index.html'])
    expect(isOwnDevice(page)).toBe(true);
  for (const page of [PAGE, 'https://localhost.example/', 'http://192.168.0.7:8000/'])
    expect(isOwnDevice(page)).toBe(false);
});

test('a short link has a code with its quiet ground; a long one has none', () => {
  const code = codeOf(PAGE)!;
  // Version v has 17 + 4v squares on a side (ISO/IEC 18004), and 4 of quiet ground all round.
  expect((code.size - 8 - 17) % 4).toBe(0);
  const squares = [...code.path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
  expect(squares.every(([x, y]) => Math.min(x, y) >= 4 && Math.max(x, y) < code.size - 4)).toBe(true);
  // The corners that a camera looks for: a ring of seven by seven about a square of three.
  const dark = new Set(squares.map(([x, y]) => `${x} ${y}`));
  for (const [cx, cy] of [
    [4, 4],
    [code.size - 11, 4],
    [4, code.size - 11],
  ] as const)
    for (let i = 0; i < 7; i++)
      for (let j = 0; j < 7; j++) {
        const ring = Math.max(Math.abs(i - 3), Math.abs(j - 3));
        expect(dark.has(`${cx + i} ${cy + j}`)).toBe(ring !== 2);
      }
  expect(codeOf('x'.repeat(1_100))).toBeNull();
});
